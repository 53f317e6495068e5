import { useState } from 'react';
import type { HistoryView, MethodView } from '#libs/contract/src/index.js';
import { ControlChart } from '../../features/results/control-chart.js';
import { useSearch } from '../../ui/use-search.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';

/** One result over all requests: trend, control limits, and which cell read it, so that a drifting one is seen. */
export function HistoryScreen() {
  const methods = useApiQuery('methods', api('GET /methods'));
  const materials = useApiQuery('methods', api('GET /materials'));
  const [code, setCode] = useState('');
  const [material, setMaterial] = useState('');
  const [key, setKey] = useState('');
  const [cell, setCell, cellTag] = useSearch();
  const method = methods.value?.find((each) => each.code === code);
  const results = method?.data.results ?? [];
  const history = useApiQuery(
    'results',
    code && key ? api('GET /results/history', { method: code, material, key, cell: cellTag }) : null,
  );
  return (
    <>
      <TitleBlock title="History of results" />
      <div className={ui.filters}>
        <SelectField
          label="Method"
          none="Choose …"
          value={code}
          onChange={(next) => {
            setCode(next);
            setKey(methods.value?.find((each) => each.code === next)?.data.usualResults[0] ?? '');
          }}
          choices={methodChoices(methods.value ?? [])}
        />
        <SelectField
          label="Result"
          none="Choose …"
          value={key}
          onChange={setKey}
          choices={results.map((value) => ({ value, label: value.replaceAll('-', ' ') }))}
        />
        <SelectField
          label="Material"
          none="any"
          value={material}
          onChange={setMaterial}
          choices={(materials.value ?? [])
            .filter(({ data }) => !method || method.data.materialGroups.includes(data.group))
            .map(({ code: value, name }) => ({ value, label: name }))}
        />
        <TextField label="Load cell" type="search" value={cell} onChange={setCell} placeholder="any, or a tag" />
      </div>
      {!code || !key ? (
        <Empty>Choose a method and a result to see it over time.</Empty>
      ) : (
        <FetchStates
          of={history}
          what="the history"
          empty={({ points }) => points.length === 0 && <Empty>No finished batch has this result yet.</Empty>}
        >
          {(value) => <History history={value} />}
        </FetchStates>
      )}
    </>
  );
}

function History({ history }: { history: HistoryView }) {
  return (
    <div className={ui.stackWide}>
      <ControlChart history={history} />
      {history.chart?.signals.map(({ index, sentence }) => (
        <p key={`${index}-${sentence}`} className={ui.noteAct}>
          {sentence}
        </p>
      ))}
      <Table history={history} />
    </div>
  );
}

function Table({ history }: { history: HistoryView }) {
  const { day } = useMoments();
  return (
    <table>
      <thead>
        <tr>
          <th>Tested</th>
          <th>Request</th>
          <th>Job</th>
          <th>Material</th>
          <th>Cell</th>
          <th className={ui.num}>n</th>
          <th className={ui.num}>Mean, {history.unit}</th>
          <th className={ui.num}>s</th>
        </tr>
      </thead>
      <tbody>
        {[...history.points].reverse().map((point) => (
          <tr key={point.jobReference + point.at}>
            <th>{day(point.at)}</th>
            <td className={ui.fig}>{point.requestReference}</td>
            <td className={ui.fig}>{point.jobReference}</td>
            <td>{point.material ?? ''}</td>
            <td className={ui.fig}>{point.cellTag ?? ''}</td>
            <td className={ui.num}>{point.n}</td>
            <td className={ui.num}>{formatNumber(point.mean, 4)}</td>
            <td className={ui.num}>
              {point.standardDeviation === null ? '–' : formatNumber(point.standardDeviation, 3)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function methodChoices(methods: readonly MethodView[]) {
  return methods.map(({ code: value, designation, title }) => ({ value, label: `${designation} ${title}` }));
}
