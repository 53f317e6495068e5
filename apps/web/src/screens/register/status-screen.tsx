import { FetchStates } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

const EVERY_MS = 15_000;

/** What is wrong with the system, in words, and what works all the same. */
export function StatusScreen() {
  const { moment } = useMoments();
  const status = useApiQuery('status', api('GET /status'), () => EVERY_MS);
  return (
    <FetchStates of={status} what="the state of the system">
      {({ parts, at }) => (
        <>
          <TitleBlock
            title="System"
            cells={[
              ['as at', moment(at)],
              ['state', parts.every(({ state }) => state === 'well') ? 'all well' : '▲ trouble'],
            ]}
          />
          <ul className={ui.stack}>
            {parts.map(({ part, state, sentence }) => (
              <li key={part} className={state === 'well' ? ui.noteFit : ui.noteAct}>
                <strong>
                  {part}: {state}
                </strong>
                <p>{sentence}</p>
              </li>
            ))}
          </ul>
        </>
      )}
    </FetchStates>
  );
}
