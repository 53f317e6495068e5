import ts from 'typescript';
import { oneOfThese, referenceTo } from './schema.js';
import type { Schema } from './schema.js';

/** Texts of this name are instants. */
const INSTANT = 'Instant';

/** Turns types of TypeScript into JSON Schemas of what they are once `JSON.stringify` has written them. */
export class TypeSchemas {
  /** Types of ours by their names; others refer to them. */
  readonly named: Record<string, Schema> = {};
  private readonly owners = new Map<string, ts.Symbol>();

  /** @param isOurs whether a type that was written in this file gets a schema with its own name */
  constructor(
    private readonly checker: ts.TypeChecker,
    private readonly isOurs: (fileName: string) => boolean,
  ) {}

  /**
   * @param written as it stands in the source, which tells instants from other texts
   * @throws Error for what has no form in JSON, such as a function
   */
  of(type: ts.Type, written?: ts.TypeNode): Schema {
    const name = this.nameOf(type);
    if (name === null) return this.unnamed(type, written);
    if (!(name in this.named)) {
      this.named[name] = {}; // it may refer to itself
      this.named[name] = { ...this.unnamed(type), ...described(type.aliasSymbol ?? type.getSymbol(), this.checker) };
    }
    return referenceTo(name);
  }

  private unnamed(type: ts.Type, written?: ts.TypeNode): Schema {
    if (type.flags & ts.TypeFlags.Unknown) return {};
    if (type.isUnion()) return this.union(type, written);
    const plain = plainSchema(type, written);
    if (plain) return plain;
    if (this.checker.isTupleType(type)) return this.tuple(type as ts.TypeReference);
    if (this.checker.isArrayType(type)) {
      const element = this.checker.getTypeArguments(type as ts.TypeReference)[0]!;
      return { type: 'array', items: this.of(element, elementOf(written)) };
    }
    if (type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)) return this.object(type);
    throw new Error(`${this.checker.typeToString(type)} has no form in JSON.`);
  }

  private union(type: ts.UnionType, written?: ts.TypeNode): Schema {
    const members = type.types.filter(({ flags }) => !(flags & ts.TypeFlags.Undefined));
    const isYesNo = ({ flags }: ts.Type) => Boolean(flags & ts.TypeFlags.BooleanLiteral);
    const yesNo: Schema[] = members.filter(isYesNo).length === 2 ? [{ type: 'boolean' }] : [];
    const others = yesNo.length > 0 ? members.filter((member) => !isYesNo(member)) : members;
    return oneOfThese([...yesNo, ...gathered(others.map((member) => this.of(member, partOf(written, member))))]);
  }

  private tuple(type: ts.TypeReference): Schema {
    const parts = this.checker.getTypeArguments(type).map((part) => this.of(part));
    return { type: 'array', prefixItems: parts, items: false, minItems: parts.length, maxItems: parts.length };
  }

  private object(type: ts.Type): Schema {
    if (type.getSymbol()?.name === 'Date') return { type: 'string', format: 'date-time' };
    if (type.getCallSignatures().length > 0) throw new Error(`${this.checker.typeToString(type)} has no form in JSON.`);
    const properties = this.checker.getPropertiesOfType(type);
    const rest = this.checker.getIndexInfoOfType(type, ts.IndexKind.String)?.type;
    const required = properties.filter(({ flags }) => !(flags & ts.SymbolFlags.Optional)).map(({ name }) => name);
    return {
      type: 'object',
      ...(properties.length > 0
        ? { properties: Object.fromEntries(properties.map((property) => [property.name, this.property(property)])) }
        : {}),
      ...(required.length > 0 ? { required } : {}),
      ...(rest ? { additionalProperties: this.of(rest) } : {}),
    };
  }

  private property(property: ts.Symbol): Schema {
    const [declared] = property.declarations ?? [];
    const written = declared && ts.isPropertySignature(declared) ? declared.type : undefined;
    return { ...this.of(this.checker.getTypeOfSymbol(property), written), ...described(property, this.checker) };
  }

  /** The name that a type has in the description; null for one that is written out where it is used. */
  private nameOf(type: ts.Type): string | null {
    const symbol = type.aliasSymbol ?? (type.isClassOrInterface() || isGeneric(type) ? type.getSymbol() : undefined);
    const file = symbol?.declarations?.[0]?.getSourceFile().fileName;
    if (!symbol || !file || !this.isOurs(file)) return null;
    const given = type.aliasSymbol
      ? (type.aliasTypeArguments ?? [])
      : isGeneric(type)
        ? this.checker.getTypeArguments(type)
        : [];
    const inner = given.map((each) => this.nameOf(each));
    if (inner.includes(null)) return null;
    const name = [symbol.name, ...inner].join('Of');
    const owner = this.owners.get(name) ?? symbol;
    if (owner !== symbol) throw new Error(`Two types are called ${name}: ${[owner, symbol].map(placeOf).join(', ')}.`);
    this.owners.set(name, symbol);
    return name;
  }
}

function isGeneric(type: ts.Type): type is ts.TypeReference {
  const { target } = type as Partial<ts.TypeReference>;
  return target !== undefined && target !== type && Boolean(target.objectFlags & ts.ObjectFlags.Interface);
}

function plainSchema(type: ts.Type, written?: ts.TypeNode): Schema | null {
  if (type.isStringLiteral()) return { type: 'string', enum: [type.value] };
  if (type.isNumberLiteral()) return { type: 'number', enum: [type.value] };
  if (type.flags & ts.TypeFlags.BooleanLiteral)
    return { type: 'boolean', enum: [(type as ts.Type & { intrinsicName: string }).intrinsicName === 'true'] };
  if (type.flags & ts.TypeFlags.StringLike)
    return { type: 'string', ...(isNamed(written, INSTANT) ? { format: 'date-time' } : {}) };
  if (type.flags & ts.TypeFlags.NumberLike) return { type: 'number' };
  if (type.flags & ts.TypeFlags.BooleanLike) return { type: 'boolean' };
  return type.flags & ts.TypeFlags.Null ? { type: 'null' } : null;
}

/** Choices among texts (or numbers) become one list of choices. */
function gathered(parts: readonly Schema[]): Schema[] {
  const isChoice = (part: Schema, type: string) => part.type === type && part.enum !== undefined;
  const choices = ['string', 'number'].flatMap((type): Schema[] => {
    const values = parts.filter((part) => isChoice(part, type)).flatMap((part) => part.enum ?? []);
    return values.length > 0 ? [{ type, enum: values }] : [];
  });
  const others = parts.filter((part) => !isChoice(part, 'string') && !isChoice(part, 'number'));
  const isNull = (part: Schema) => part.type === 'null';
  return [...choices, ...others.filter((part) => !isNull(part)), ...others.filter(isNull)];
}

function described(symbol: ts.Symbol | undefined, checker: ts.TypeChecker): Schema {
  const text = symbol && ts.displayPartsToString(symbol.getDocumentationComment(checker));
  return text ? { description: text } : {};
}

function isNamed(written: ts.TypeNode | undefined, name: string): boolean {
  return written !== undefined && ts.isTypeReferenceNode(written) && written.typeName.getText() === name;
}

/** Of `Instant | null` the part that tells what the texts in it are. */
function partOf(written: ts.TypeNode | undefined, { flags }: ts.Type): ts.TypeNode | undefined {
  if (!written || !ts.isUnionTypeNode(written)) return written;
  return flags & ts.TypeFlags.String ? written.types.find((part) => isNamed(part, INSTANT)) : undefined;
}

function elementOf(written: ts.TypeNode | undefined): ts.TypeNode | undefined {
  return written && ts.isArrayTypeNode(written) ? written.elementType : undefined;
}

function placeOf(symbol: ts.Symbol): string {
  return symbol.declarations?.[0]?.getSourceFile().fileName ?? 'nowhere';
}
