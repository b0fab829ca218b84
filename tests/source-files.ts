import { readdirSync, readFileSync } from 'node:fs';
import { posix, sep } from 'node:path';
import ts from 'typescript';

/** Texts that were read before. */
const read = new Map<string, readonly Import[]>();

/** One import of a module. */
interface Import {
  readonly specifier: string;
  readonly typeOnly: boolean;
}

/**
 * Every module a source text imports, re-exports, loads by `import()` or names in an `import('...')` type.
 */
export function importsOf(text: string): readonly Import[] {
  const known = read.get(text);
  if (known !== undefined) return known;
  const found: Import[] = [];
  read.set(text, found);
  const visit = (node: ts.Node): void => {
    if (
      (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) &&
      node.moduleSpecifier &&
      ts.isStringLiteral(node.moduleSpecifier)
    ) {
      found.push({ specifier: node.moduleSpecifier.text, typeOnly: isOfTypes(node) });
    } else if (
      ts.isImportTypeNode(node) &&
      ts.isLiteralTypeNode(node.argument) &&
      ts.isStringLiteral(node.argument.literal)
    ) {
      found.push({ specifier: node.argument.literal.text, typeOnly: true });
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [name] = node.arguments;
      found.push({
        specifier: ts.isStringLiteralLike(name) ? name.text : '(computed)',
        typeOnly: false,
      });
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('file.ts', text, ts.ScriptTarget.ES2022));
  return found;
}

function isOfTypes(node: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  if (ts.isExportDeclaration(node)) return node.isTypeOnly;
  return node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
}

/** What a file imports of its own program, paths relative to src/. */
export function importedFiles(file: string, text: string, withTypes: boolean): string[] {
  return importsOf(text)
    .filter(({ specifier, typeOnly }) => specifier.startsWith('.') && (withTypes || !typeOnly))
    .map(({ specifier }) => posix.join(posix.dirname(file), specifier).replace(/\.js$/, '.ts'));
}

/** Sources of the program: path relative to src/ with forward slashes -> text. */
export function sourceFiles(): Map<string, string> {
  const root = new URL('../src/', import.meta.url);
  const names = readdirSync(root, { recursive: true, encoding: 'utf8' }).map((name) =>
    name.split(sep).join('/'),
  );
  return new Map(
    names
      .filter((name) => name.endsWith('.ts'))
      .map((name) => [name, readFileSync(new URL(name, root), 'utf8')]),
  );
}
