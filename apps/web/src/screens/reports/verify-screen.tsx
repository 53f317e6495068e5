import { useState } from 'react';
import type { VerifyView } from '#libs/contract/src/index.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Open to everybody with a report in hand: is this number known, and is this file the one that was issued? */
export function VerifyScreen() {
  const number = decodeURIComponent(location.pathname.replace(/^\/verify\/?/, ''));
  const asked = new URLSearchParams(location.search);
  const revision = Number(asked.get('revision')) || undefined;
  const [hash, setHash] = useState(asked.get('hash') ?? '');
  const [hasFile, setHasFile] = useState(false);
  const answer = useApiQuery('reports', number ? api('GET /verify/{number}', { number, hash, revision }) : null);
  async function hashFile(file: File) {
    const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
    setHasFile(true);
    setHash([...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join(''));
  }
  return (
    <main style={{ maxWidth: '46rem', margin: '0 auto', padding: '2rem 1.5rem' }}>
      <TitleBlock title={number ? `Verify report ${number}` : 'Verify a report'} />
      <div className={ui.stackWide}>
        {number ? (
          <FetchStates of={answer} what="the report">
            {(value) => (
              <>
                <Answer answer={value} hasFile={hasFile} />
                {value.known ? <FileToCompare onFile={(file) => void hashFile(file)} /> : <NumberForm start={number} />}
              </>
            )}
          </FetchStates>
        ) : (
          <NumberForm start="" />
        )}
      </div>
    </main>
  );
}

/** @param start the number that was looked up before */
function NumberForm({ start }: { start: string }) {
  const [typed, setTyped] = useState(start);
  return (
    <form
      className={ui.rowEnd}
      onSubmit={(event) => {
        event.preventDefault();
        location.assign(`/verify/${encodeURIComponent(typed.trim())}`);
      }}
    >
      <TextField label="Number on the report" value={typed} onChange={setTyped} />
      <button type="submit" className={ui.buttonMain} disabled={!typed.trim()}>
        Look it up
      </button>
    </form>
  );
}

function FileToCompare({ onFile }: { onFile: (file: File) => void }) {
  return (
    <div className={ui.field}>
      <label htmlFor="verify-file">Is the file that you have the one that was issued?</label>
      <input
        id="verify-file"
        type="file"
        accept="application/pdf"
        onChange={(event) => event.target.files?.[0] && onFile(event.target.files[0])}
      />
      <span className={ui.help}>The file stays on your device; only its SHA-256 is compared.</span>
    </div>
  );
}

/** @param hasFile whether a file was looked at; else the hash is the one of the link that led here */
function Answer({ answer, hasFile }: { answer: VerifyView; hasFile: boolean }) {
  const { moment } = useMoments();
  if (!answer.known)
    return (
      <p className={ui.noteAct}>No report of this lab has that number. Compare it with the one that is printed.</p>
    );
  return (
    <div className={ui.stack}>
      <p className={ui.noteFit}>
        Report {answer.number}, revision {answer.revision}, was issued on {moment(answer.issuedAt)}.
      </p>
      {answer.supersededBy !== null && <p className={ui.noteAct}>It is replaced by revision {answer.supersededBy}.</p>}
      {answer.matches === true && (
        <p className={ui.noteFit}>
          {hasFile
            ? 'The file is the one that was issued, byte for byte.'
            : 'The SHA-256 in your link is that of the report that was issued. To check a file, choose it below.'}
        </p>
      )}
      {answer.matches === false && (
        <p className={ui.noteAct}>
          {hasFile
            ? 'The file is not the one that was issued.'
            : 'The SHA-256 in your link is not that of the report that was issued.'}
        </p>
      )}
    </div>
  );
}
