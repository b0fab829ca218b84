// Checks the types: `npm run typecheck`. An element of an array may be missing (noUncheckedIndexedAccess), except in the
// folders of tsconfig.arrays.json, which read typed arrays by ids that the compiled model keeps in range. The compiler has
// one such setting a program, so there are two programs; each file is read once and checked in the one it belongs to.
import { relative } from 'node:path';
import ts from 'typescript';

const arrays = parsed('tsconfig.arrays.json');
const whole = parsed('tsconfig.json');
const live = parsed('tsconfig.live.json');
const ofArrays = new Set(arrays.fileNames);
const host = ts.createCompilerHost(whole.options);
const { getSourceFile } = host,
  files = new Map();
host.getSourceFile = (name, ...rest) => {
  if (!files.has(name)) files.set(name, getSourceFile(name, ...rest));
  return files.get(name);
};

const problems = [
  ...problemsOf(whole, (name) => !ofArrays.has(name)),
  ...problemsOf(arrays, (name) => ofArrays.has(name)),
  // What runs in the page knows a browser's things, and no others.
  ...problemsOf(live, (name) => live.fileNames.includes(name)),
];
process.stdout.write(ts.formatDiagnosticsWithColorAndContext(problems, ts.createCompilerHost(whole.options)));
process.exitCode = problems.length > 0 ? 1 : 0;

function parsed(file) {
  const config = ts.getParsedCommandLineOfConfigFile(
    file,
    {},
    { ...ts.sys, onUnRecoverableConfigFileDiagnostic: fail },
  );
  if (config.errors.length > 0) fail(config.errors[0]);
  return config;
}

function problemsOf({ fileNames, options }, isChecked) {
  const program = ts.createProgram({ rootNames: fileNames, options, host });
  const checked = program.getSourceFiles().filter(({ fileName }) => isChecked(fileName));
  return [
    ...program.getOptionsDiagnostics(),
    ...program.getGlobalDiagnostics(),
    ...checked.flatMap((file) => [
      ...program.getSyntacticDiagnostics(file),
      ...program.getSemanticDiagnostics(file),
    ]),
  ];
}

function fail({ file, messageText }) {
  throw new Error(
    `${file === undefined ? 'tsconfig' : relative('.', file.fileName)}: ${ts.flattenDiagnosticMessageText(messageText, '\n')}`,
  );
}
