import type { Answer, Client } from '../support/client.js';

/** Every point of the review that ISO/IEC 17025:2017 7.1 asks for. */
export const REVIEWED = { methodAgreed: true, capabilityShown: true, specimensAgreed: true, disposalAgreed: true };

/** What happened to something, oldest first, as the auditor reads it. */
export async function eventsOf(auditor: Client, subjectId: string): Promise<string[]> {
  const { body } = await auditor.get<{ rows: { kind: string }[] }>(`/record?subject=${subjectId}`);
  return body.rows.map(({ kind }) => kind).reverse();
}

/** Status and problem of a refusal, for comparing in one line. */
export function refusal({ status, body }: Answer<any>): [number, string] {
  return [status, String(body?.type ?? '').replace('/problems/', '')];
}

/** The settings of the lab with some changed; planning takes a moment instead of seconds. */
export async function setUpLab(manager: Client, changed: Record<string, unknown> = {}): Promise<void> {
  const { body, headers } = await manager.get('/settings');
  const { version: _, demo: __, ...settings } = body;
  const laboratory = {
    name: 'Northmoor test lab',
    address: 'Mill Lane 4, Northmoor',
    contact: 'lab@northmoor.example',
  };
  const answer = await manager.put(
    '/settings',
    { ...settings, ...laboratory, planningSeconds: 0.3, ...changed },
    { headers: { 'if-match': headers.get('etag')! } },
  );
  if (answer.status !== 200) throw new Error(JSON.stringify(answer.body));
}
