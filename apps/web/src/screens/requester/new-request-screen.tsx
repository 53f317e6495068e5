import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { useSession } from '../../features/session/session.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { RequestForm } from './request-form.js';

/** The request form, new or of a draft, with what the lab can do about it beside. */
export function NewRequestScreen({ id }: { id?: string }) {
  const { person } = useSession();
  const all = useApiQuery('people', person.teams.length === 0 ? api('GET /teams') : null);
  const teams = person.teams.length > 0 ? person.teams : (all.value?.rows ?? []);
  const methods = useApiQuery('methods', api('GET /methods'));
  const materials = useApiQuery('methods', api('GET /materials'));
  const request = useApiQuery('requests', id ? api('GET /requests/{id}', { id }) : null);
  return (
    <FetchStates of={methods} what="the methods">
      {(offered) => (
        <FetchStates of={materials} what="the materials">
          {(known) => {
            const lists = { methods: offered, materials: known, teams };
            if (!id) return <RequestForm {...lists} />;
            return (
              <FetchStates of={request} what="the request">
                {(value) => <RequestForm key={value.id} {...lists} request={value} />}
              </FetchStates>
            );
          }}
        </FetchStates>
      )}
    </FetchStates>
  );
}
