import { describe, expect, it } from 'vitest';
import { optionName } from '../../../src/cli/arguments/option.js';
import { COMMANDS } from '../../../src/cli/commands/index.js';

const options = COMMANDS.flatMap((command) =>
  Object.entries(command.options).map(([key, option]) => ({ command, key, option })),
);

describe('the list of commands', () => {
  it('has each name once, and shows an example of each command', () => {
    const names = COMMANDS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, examples } of COMMANDS)
      expect(examples.flat().some((line) => line.startsWith(`rateproof ${name} `))).toBe(true);
  });

  it.each(options.map((each) => [`${each.command.name} --${optionName(each.key)}`, each] as const))(
    '%s can read its own default, and needs an option that the command has',
    (_, { command, key, option }) => {
      if (option.byDefault !== undefined)
        expect(option.read([], `--${optionName(key)}`)).toEqual(
          option.read([option.byDefault], `--${optionName(key)}`),
        );
      if (option.needs !== undefined) expect(Object.keys(command.options)).toContain(option.needs.option);
    },
  );
});
