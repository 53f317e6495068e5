import { useState } from 'react';
import { Link } from 'wouter';
import { REQUEST_STATES } from '#libs/contract/src/index.js';
import { RequestLines } from '../../features/requests/request-lines.js';
import { REQUEST_STATE_WORDS } from '../../features/requests/words.js';
import { useHasRole } from '../../features/session/session.js';
import { useSettled } from '../../features/matching/use-preview.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick } from '../../ui/fields/ticks.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiPages } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

const STATES = REQUEST_STATES.map((value) => ({ value, label: REQUEST_STATE_WORDS[value] }));

/** All requests that the person may see. */
export function RequestsScreen() {
  const isRequester = useHasRole('requester');
  const mayAsk = useHasRole('requester', 'manager');
  const [state, setState] = useState('');
  const [mine, setMine] = useState(isRequester);
  const [text, setText] = useState('');
  const q = useSettled(text);
  const lines = useApiPages('requests', api('GET /requests', { state, mine: mine || null, q }));
  const filtered = state !== '' || q !== '' || mine;
  return (
    <>
      <TitleBlock
        title="Requests"
        cells={[['shown', lines.value ? `${lines.value.length}${lines.more ? ' and more' : ''}` : '…']]}
      >
        {mayAsk && (
          <Link className={ui.buttonMain} href="/requests/new">
            New request
          </Link>
        )}
      </TitleBlock>
      <div className={ui.filters}>
        <TextField
          label="Find"
          type="search"
          value={text}
          onChange={setText}
          placeholder="R-2031, steerer tube, ISO 527"
        />
        <SelectField label="Where it is" none="anywhere" value={state} onChange={setState} choices={STATES} />
        {isRequester && <Tick label="only mine" checked={mine} onChange={setMine} />}
      </div>
      <FetchStates
        of={lines}
        what="the requests"
        empty={(value) => value.length === 0 && <NoRequests filtered={filtered} mayAsk={mayAsk} />}
      >
        {(value) => <RequestLines lines={value} />}
      </FetchStates>
      {lines.more && (
        <p style={{ paddingTop: '1rem' }}>
          <button type="button" className={ui.button} onClick={lines.more}>
            Show more
          </button>
        </p>
      )}
    </>
  );
}

function NoRequests({ filtered, mayAsk }: { filtered: boolean; mayAsk: boolean }) {
  return (
    <Empty
      action={
        mayAsk && (
          <Link className={ui.buttonMain} href="/requests/new">
            Ask for a test
          </Link>
        )
      }
    >
      {filtered
        ? 'No request fits this search. Change it, or ask for a new test.'
        : 'Nothing has been asked for yet. A request says what to test and what for; the page shows at once which load trains can run it.'}
    </Empty>
  );
}
