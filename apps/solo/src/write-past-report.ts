import { reportDocument } from '#apps/api/src/reports/report-document.js';
import { getPerson, labSettings, RequestRepository, resultsOfRequest, teamNamed } from '#libs/records/src/index.js';
import type { WriteReport } from '#seed/load-demo-lab.js';

/** Writes the reports that the demo lab issued in the past, as the api writes those of today. */
export const writePastReport: WriteReport = async (manager, { requestId, ...issued }) => {
  const request = await new RequestRepository(manager).get(requestId, undefined);
  const requester = await getPerson(manager, request.requesterId);
  return reportDocument({
    ...issued,
    request,
    settings: await labSettings(manager),
    team: await teamNamed(manager, request.teamId),
    requester: { name: requester.name, email: requester.email },
    found: await resultsOfRequest(manager, requestId),
    remarks: {},
  });
};
