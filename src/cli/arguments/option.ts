import { UsageError } from '../usage-error.js';

/** From a text on the command line to its value. `option` is `--name`. Throws a UsageError if it is wrong. */
export type Reader<Value> = (text: string, option: string) => Value;

/** An option of a command: what the help says, what the parser must know, and how its value is read. */
export interface Option<Value> {
  /** A line of the help page, without the default; undefined: the option is not shown. */
  readonly help: string | undefined;
  /** It stands alone, without a value. */
  readonly isFlag: boolean;
  /** What stands for the value if the option is not given, as one would write it. */
  readonly byDefault: string | undefined;
  /** Another option that this one makes no sense without. */
  readonly needs: Needs | undefined;
  /** `texts`: the values given, in their order; none if the option was not given. */
  readonly read: (texts: readonly string[], option: string) => Value;
}
interface Needs {
  /** Key of the other option in the command's options. */
  readonly option: string;
  /** It, and what it is for, in words. */
  readonly inWords: string;
  readonly hint: string;
}

/** A word that a command takes besides its options, such as FILE. */
export interface Word<Value> {
  /** As the help writes it. */
  readonly name: string;
  /** As an error calls it. */
  readonly inWords: string;
  readonly help: string;
  /** There may be any number of them. */
  readonly isMany: boolean;
  readonly read: (texts: readonly string[]) => Value;
}

/** By the name under which a command gets the value. */
export type Options = Readonly<Record<string, Option<unknown>>>;
export type Words = Readonly<Record<string, Word<unknown>>>;
/** The values of a set of options or words. */
export type Values<All> = {
  readonly [Name in keyof All]: All[Name] extends { readonly read: (...texts: never) => infer Value }
    ? Value
    : never;
};

export const flag = (help: string, needs?: Needs): Option<boolean> => ({
  help,
  isFlag: true,
  byDefault: undefined,
  needs,
  read: (texts) => texts.length > 0,
});

/** An option with a default; the last value counts. */
export const withDefault = <Value>(help: string, byDefault: string, read: Reader<Value>): Option<Value> => ({
  ...optional(help, read),
  byDefault,
  read: (texts, option) => read(texts.at(-1) ?? byDefault, option),
});

/** An option that is undefined if it is not given; the last value counts. */
export const optional = <Value>(
  help: string,
  read: Reader<Value>,
  needs?: Needs,
): Option<Value | undefined> => ({
  help,
  isFlag: false,
  byDefault: undefined,
  needs,
  read: (texts, option) => {
    const text = texts.at(-1);
    return text === undefined ? undefined : read(text, option);
  },
});

/** An option that must be given; `missing` says what is expected, `hint` shows how. */
export const required = <Value>(
  help: string,
  read: Reader<Value>,
  missing: string,
  hint: string,
): Option<Value> => ({
  ...optional(help, read),
  read: (texts, option) => {
    const text = texts.at(-1);
    if (text === undefined) throw new UsageError(`expected ${option} with ${missing}, got none`, hint);
    return read(text, option);
  },
});

/** An option that may be given several times, every value of which counts. */
export const repeatable = (help: string): Option<readonly string[]> => ({
  ...optional(help, String),
  read: (texts) => texts,
});

/** The parser has seen to it that the word is there. */
export const word = (name: string, inWords: string, help: string): Word<string> => ({
  name,
  inWords,
  help,
  isMany: false,
  read: ([text = '']) => text,
});

export const words = (name: string, inWords: string, help: string): Word<readonly string[]> => ({
  ...word(name, inWords, help),
  isMany: true,
  read: (texts) => texts,
});

/** `findingOk` is `--finding-ok` on the command line. */
export const optionName = (key: string): string =>
  key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
