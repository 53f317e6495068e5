import { DefaultNamingStrategy, Table } from 'typeorm';

const snake = (name: string) =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1_$2')
    .replace(/([A-Z])([A-Z][a-z])/g, '$1_$2')
    .toLowerCase();

/** Columns are the property in snake case, unit and all: `peakForceN` is kept in `peak_force_n`. */
export class SnakeNames extends DefaultNamingStrategy {
  override columnName(property: string, custom: string | undefined, prefixes: string[]): string {
    return snake([...prefixes, custom ?? property].join('_'));
  }

  override primaryKeyName(table: Table | string): string {
    return `pk_${nameOf(table)}`;
  }

  override foreignKeyName(table: Table | string, columns: string[]): string {
    return `fk_${nameOf(table)}_${columns.join('_')}`;
  }

  override uniqueConstraintName(table: Table | string, columns: string[]): string {
    return `uq_${nameOf(table)}_${columns.join('_')}`;
  }

  override indexName(table: Table | string, columns: string[]): string {
    return `ix_${nameOf(table)}_${columns.join('_')}`;
  }
}

function nameOf(table: Table | string): string {
  return (table instanceof Table ? table.name : table).split('.').pop()!;
}
