/** What was asked, as far as it matters to judge the answer. */
export interface Asked {
  label: string;
  /** Everything that was sent, as text: what comes back of it is no secret. */
  sent: string;
  signedIn: boolean;
  /** Open to everybody by the code. */
  open: boolean;
  /** What this person must never be shown. */
  secrets: readonly string[];
}

export interface Got {
  status: number;
  type: string;
  text: string;
}

const INSIDE =
  /\bat [\w.<>]+ \(|node_modules|file:\/\/\/|\/(dist|src)\/[\w/-]+\.[jt]s|QueryFailedError|syntax error at|relation ".*?" does|violates .{0,30}constraint|\b(Type|Range|Reference|Syntax)Error\b|Cannot read prop|is not a function|\bselect .{1,200}\bfrom\b|\binsert into\b/i;

/** Statuses that a refusal may have; anything of the server's own fault is none of them. */
const REFUSALS = [400, 401, 403, 404, 405, 409, 412, 413, 415, 422, 428, 429];

/** Longer heads than it reads are refused by Node itself, before anything of ours is asked. */
const HEAD_TOO_LARGE = 431;

/** No worker runs here: where a request would land is the one thing that is asked of it while somebody waits. */
const NO_WORKER = /"type":"\/problems\/landing\/unavailable"/;

/** What is wrong with an answer, in words; empty when nothing is. */
export function faultsOf(asked: Asked, { status, type, text }: Got): string[] {
  if (status === HEAD_TOO_LARGE && text === '') return [];
  if (status === 503 && NO_WORKER.test(text)) return [];
  const faults: string[] = [];
  if (status >= 500) faults.push(`answers ${status}`);
  else if (status >= 400 && !REFUSALS.includes(status)) faults.push(`refuses with ${status}`);
  if (status >= 400) faults.push(...faultsOfProblem(status, type, text));
  if (status < 400 && !asked.signedIn && !asked.open) faults.push(`serves who is not signed in (${status})`);
  const inside = INSIDE.exec(text)?.[0];
  if (inside && status >= 400 && !asked.sent.includes(inside)) faults.push(`shows the inside: ${inside}`);
  const told = asked.secrets.find((secret) => text.includes(secret) && !asked.sent.includes(secret));
  if (told) faults.push(`shows what belongs to another team: ${told}`);
  return faults.map((fault) => `${asked.label} ${fault}`);
}

/** A file is refused by its lines: each is named, and what is wrong with it. */
function faultsOfImport({ facts }: Problem): string[] {
  const problems = facts?.problems ?? [];
  const named = problems.every(({ line, sentence }) => typeof line === 'number' && typeof sentence === 'string');
  return problems.length > 0 && named ? [] : ['refuses an import without the lines that are wrong'];
}

interface Problem {
  type?: unknown;
  title?: unknown;
  status?: unknown;
  detail?: unknown;
  errors?: { field?: unknown; allowed?: unknown; sentence?: unknown }[];
  facts?: { problems?: { line?: unknown; sentence?: unknown }[] };
}

function faultsOfProblem(status: number, type: string, text: string): string[] {
  if (!type.startsWith('application/problem+json')) return [`refuses with ${status} as ${type || 'nothing'}`];
  const problem = JSON.parse(text) as Problem;
  const whole =
    [problem.type, problem.title, problem.detail].every((part) => typeof part === 'string' && part !== '') &&
    problem.status === status;
  if (!whole) return ['refuses without type, title, status and detail'];
  if (status !== 422 || String(problem.type).startsWith('/problems/database/')) return [];
  if (problem.type === '/problems/import/invalid') return faultsOfImport(problem);
  const errors = problem.errors ?? [];
  const named = errors.every(
    ({ field, allowed }) => typeof field === 'string' && typeof allowed === 'string' && allowed !== '',
  );
  return errors.length > 0 && named
    ? []
    : [`refuses with 422 (${String(problem.type)}) without field and what is allowed`];
}
