/** What a mail says of a notice. */
export interface NoticeWords {
  subject: string;
  sentence: string;
  path: string;
}

/** The text of a mail about one notice. @param publicUrl where people reach the page */
export function noticeText({ sentence, path }: NoticeWords, publicUrl: string): string {
  return [sentence, '', addressOf(path, publicUrl), '', footer(publicUrl)].join('\n');
}

/** The text of a mail about several, oldest first. */
export function digestText(notices: readonly NoticeWords[], publicUrl: string): string {
  const parts = notices.map(({ subject, sentence, path }) =>
    [subject, `  ${sentence}`, `  ${addressOf(path, publicUrl)}`, ''].join('\n'),
  );
  return [...parts, footer(publicUrl)].join('\n');
}

function footer(publicUrl: string): string {
  return `You choose which mails you get at ${addressOf('/notices', publicUrl)}`;
}

function addressOf(path: string, publicUrl: string): string {
  return publicUrl.replace(/\/$/, '') + path;
}
