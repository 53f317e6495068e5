import { clsx } from 'clsx';
import { useState } from 'react';
import type { MaterialView } from '#libs/contract/src/index.js';
import { MaterialDialog } from '../../features/register/material-dialog.js';
import { useSearch } from '../../ui/use-search.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Strength bands as they are found in practice, each with its source and how sure it is. */
export function MaterialsScreen() {
  const mayAdd = useHasRole('manager');
  const [adding, setAdding] = useState(false);
  const materials = useApiQuery('methods', api('GET /materials'));
  const [text, setText, q] = useSearch();
  const shown = (materials.value ?? []).filter(({ name, group }) =>
    `${name} ${group}`.toLowerCase().includes(q.toLowerCase()),
  );
  return (
    <>
      <TitleBlock title="Materials" cells={[['in the library', materials.value?.length ?? '…']]}>
        {mayAdd && (
          <button type="button" className={ui.buttonMain} onClick={() => setAdding(true)}>
            Add a material
          </button>
        )}
      </TitleBlock>
      <div className={ui.filters}>
        <TextField label="Find" type="search" value={text} onChange={setText} />
      </div>
      <FetchStates
        of={materials}
        what="the materials"
        empty={(value) => value.length === 0 && <Empty>The library is empty.</Empty>}
      >
        {() => <MaterialTable materials={shown} />}
      </FetchStates>
      {adding && <MaterialDialog onClose={() => setAdding(false)} />}
    </>
  );
}

function MaterialTable({ materials }: { materials: readonly MaterialView[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th>Material</th>
          <th>Group</th>
          <th>Strength bands</th>
          <th className={ui.num}>Modulus, GPa</th>
          <th>Source</th>
        </tr>
      </thead>
      <tbody>
        {materials.map(({ id, name, group, data }) => (
          <tr key={id}>
            <th>{name}</th>
            <td>{group}</td>
            <td>
              {data.strengths.map((band) => (
                <div key={band.property} className={ui.fig}>
                  {band.property} {bandText(band.low, band.high)} {band.unit}
                </div>
              ))}
            </td>
            <td className={ui.num}>
              {data.modulusMPa ? bandText(data.modulusMPa.low / 1000, data.modulusMPa.high / 1000) : ''}
            </td>
            <td className={clsx(ui.small, ui.soft)}>
              {data.source}
              <br />
              {data.confidence}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function bandText(low: number, high: number): string {
  return low === high ? String(low) : `${low} – ${high}`;
}
