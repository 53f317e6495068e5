import type { DataSource } from 'typeorm';
import type { Statement } from './capture-sql.js';

/** What the server did for one request of ours. */
export interface Cost {
  queries: number;
  /** Planning and execution of all, ms. */
  serverMs: number;
  /** Tables that were read from end to end, with how many rows they have, when they are more than a screenful of pages. */
  wholeTables: string[];
}

interface PlanNode {
  'Node Type': string;
  'Relation Name'?: string;
  'Actual Rows': number;
  'Actual Loops': number;
  'Rows Removed by Filter'?: number;
  Plans?: PlanNode[];
}

const FEW_ROWS = 2_000;

/** Explains every reading statement, executed once before so that its pages are warm. */
export async function costOf(records: DataSource, statements: readonly Statement[]): Promise<Cost> {
  const cost: Cost = { queries: 0, serverMs: 0, wholeTables: [] };
  for (const { text, values } of statements.filter((one) => /^\s*(select|with)/i.test(one.text))) {
    await records.query(text, values);
    const [row] = await records.query<Record<string, ExplainedPlan[]>[]>(
      `explain (analyze, format json) ${text}`,
      values,
    );
    const [explained] = row!['QUERY PLAN']!;
    cost.queries++;
    cost.serverMs += explained!['Planning Time'] + explained!['Execution Time'];
    cost.wholeTables.push(...wholeTables(explained!.Plan));
  }
  return { ...cost, wholeTables: [...new Set(cost.wholeTables)] };
}

interface ExplainedPlan {
  Plan: PlanNode;
  'Planning Time': number;
  'Execution Time': number;
}

function wholeTables(node: PlanNode): string[] {
  const read = (node['Actual Rows'] + (node['Rows Removed by Filter'] ?? 0)) * node['Actual Loops'];
  const own =
    node['Node Type'] === 'Seq Scan' && read > FEW_ROWS ? [`${node['Relation Name']} (${Math.round(read)} rows)`] : [];
  return [...own, ...(node.Plans ?? []).flatMap(wholeTables)];
}
