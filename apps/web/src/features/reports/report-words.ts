import type { ReportState } from '#libs/contract/src/index.js';

export const REPORT_STATE_WORDS: Record<ReportState, string> = {
  draft: 'being prepared',
  issuing: 'being issued',
  issued: 'issued',
  superseded: 'replaced',
};
