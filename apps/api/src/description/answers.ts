import { join } from 'node:path';
import ts from 'typescript';
import type { Schema } from './schema.js';
import { TypeSchemas } from './type-schemas.js';

/** What an operation answers with when it does as asked; JSON where no other media type is named. */
export interface Answer {
  schema: Schema | null;
  /** Media types of what is no JSON. */
  produces: string[];
  /** What the operation does, as its comment says; empty without one. */
  about: string;
}

export interface Answers {
  /** By operation id. */
  answers: Record<string, Answer>;
  schemas: Record<string, Schema>;
}

/** Types that are described without being any operation's answer. */
const ALSO = { file: 'libs/contract/src/platform.ts', names: ['Problem', 'LiveEvent'] };
const FILE = 'Promise<StreamableFile>';
const VERBS = ['Get', 'Post', 'Put', 'Patch', 'Delete'];

/**
 * Reads from the sources what every method of a controller answers with, by the type that it declares.
 *
 * @param root the project's folder
 * @param controllers their files, below the root
 * @throws Error for an answer that has no form in JSON
 */
export function answersIn(root: string, controllers: readonly string[]): Answers {
  const program = programOf(root, [...controllers, ALSO.file]);
  const checker = program.getTypeChecker();
  const schemas = new TypeSchemas(checker, (file) => file.startsWith(`${root}/`) && !file.includes('/node_modules/'));
  const sourceOf = (file: string) => program.getSourceFile(join(root, file))!;
  for (const name of ALSO.names) schemas.of(exportedType(sourceOf(ALSO.file), name, checker));
  const answers = controllers.flatMap((file) =>
    sourceOf(file)
      .statements.filter(ts.isClassDeclaration)
      .filter((one) => decoratorOf(one, ['Controller']))
      .flatMap((controller) => methodsOf(controller).map((method) => [idOf(controller, method), method] as const)),
  );
  return {
    answers: Object.fromEntries(answers.map(([id, method]) => [id, answerOf(id, method, checker, schemas)])),
    schemas: schemas.named,
  };
}

/** Only sources of ours are followed: what packages declare is no answer of ours, and reading it takes most of the time. */
function programOf(root: string, files: readonly string[]): ts.Program {
  const { config } = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile) as { config: object };
  const { options } = ts.parseJsonConfigFileContent({ ...config, include: [], files: [...files] }, ts.sys, root);
  const narrowed = { ...options, types: [], lib: ['lib.es2023.d.ts'] };
  const host = ts.createCompilerHost(narrowed);
  host.resolveModuleNameLiterals = (names, from, _, __, { impliedNodeFormat }) =>
    names.map(({ text }) =>
      /^[.#]/.test(text)
        ? ts.resolveModuleName(text, from, narrowed, host, undefined, undefined, impliedNodeFormat)
        : { resolvedModule: undefined },
    );
  return ts.createProgram({ rootNames: files.map((file) => join(root, file)), options: narrowed, host });
}

function answerOf(id: string, method: ts.MethodDeclaration, checker: ts.TypeChecker, schemas: TypeSchemas): Answer {
  const declared = checker.getReturnTypeOfSignature(checker.getSignatureFromDeclaration(method)!);
  const type = checker.getAwaitedType(declared) ?? declared;
  const about = ts.displayPartsToString(
    checker.getSymbolAtLocation(method.name)?.getDocumentationComment(checker) ?? [],
  );
  const produces = textsIn(decoratorOf(method, ['ApiProduces']));
  if (type.flags & (ts.TypeFlags.Void | ts.TypeFlags.Undefined)) return { schema: null, produces, about };
  const isFile = method.type?.getText() === FILE;
  const isText = Boolean(type.flags & ts.TypeFlags.String);
  if ((isFile || isText) && produces.length === 0)
    throw new Error(`Say with @ApiProduces which media type ${id} answers with.`);
  return { schema: isFile ? {} : schemas.of(type), produces, about };
}

function methodsOf(controller: ts.ClassDeclaration): ts.MethodDeclaration[] {
  return controller.members
    .filter(ts.isMethodDeclaration)
    .filter((method) => decoratorOf(method, VERBS) && !decoratorOf(method, ['ApiExcludeEndpoint']));
}

function decoratorOf(node: ts.HasDecorators, names: readonly string[]): ts.CallExpression | undefined {
  return (ts.getDecorators(node) ?? [])
    .map(({ expression }) => expression)
    .filter(ts.isCallExpression)
    .find(({ expression }) => names.includes(expression.getText()));
}

function textsIn(call: ts.CallExpression | undefined): string[] {
  return (call?.arguments ?? ts.factory.createNodeArray<ts.Expression>())
    .filter(ts.isStringLiteral)
    .map(({ text }) => text);
}

/** The same as the framework's own description is told to use. */
function idOf(controller: ts.ClassDeclaration, method: ts.MethodDeclaration): string {
  return operationId(controller.name?.text ?? '', method.name.getText());
}

export function operationId(controller: string, method: string): string {
  return `${controller.replace('Controller', '')}_${method}`;
}

function exportedType(source: ts.SourceFile, name: string, checker: ts.TypeChecker): ts.Type {
  const exported = checker.getExportsOfModule(checker.getSymbolAtLocation(source)!);
  const symbol = exported.find((each) => each.name === name);
  if (!symbol) throw new Error(`${source.fileName} exports no ${name}.`);
  return checker.getDeclaredTypeOfSymbol(symbol);
}
