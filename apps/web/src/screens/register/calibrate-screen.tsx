import { clsx } from 'clsx';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type {
  CalibratedRangeView,
  EvaluationView,
  ItemDetail,
  RecordCalibrationBody,
} from '#libs/contract/src/index.js';
import { EvaluationTable } from '../../features/calibration/evaluation-table.js';
import {
  ExtensionReadingsForm,
  ForceReadingsForm,
  emptyExtension,
  emptyForce,
  extensionBody,
  extensionProblems,
  forceBody,
  forceProblems,
} from '../../features/calibration/readings-form.js';
import { CALIBRATED_QUANTITIES } from '#libs/matching/src/index.js';
import { decimalMarkIn, parseHinted } from '#libs/units/src/index.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError, call, newIdempotencyKey } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

/** Enters a calibration: from readings, which give class and range, or as the certificate states them. */
export function CalibrateScreen({ id }: { id: string }) {
  const item = useApiQuery('items', api('GET /items/{id}', { id }));
  return (
    <FetchStates of={item} what="the item">
      {(value) => <CalibrateForm item={value} />}
    </FetchStates>
  );
}

interface RangeTyped {
  direction: string;
  className: string;
  from: string;
  to: string;
}

const UNIT_OF: Record<string, CalibratedRangeView['unit']> = {
  tension: 'N',
  compression: 'N',
  torque: 'N·m',
  extension: 'mm',
  temperature: '°C',
  speed: 'mm/min',
};

function CalibrateForm({ item }: { item: ItemDetail }) {
  const { toLocalInput } = useMoments();
  const isExtensometer = item.kind === 'extensometer';
  const [, go] = useLocation();
  const toast = useToast();
  const torque = Number(item.details['torqueCapacityNm'] ?? 0);
  const capacity = Number(item.details['capacityN'] ?? 0);
  const usual = isExtensometer
    ? 'extension'
    : torque > 0 && capacity === 0
      ? 'torque'
      : item.kind === 'load-cell'
        ? 'tension'
        : 'temperature';
  const readable = isExtensometer || item.kind === 'load-cell';
  const [by, setBy] = useState<'readings' | 'certificate'>(readable ? 'readings' : 'certificate');
  const [head, setHead] = useState({
    standard: isExtensometer ? 'ISO 9513' : 'ISO 7500-1',
    certificateNumber: '',
    laboratory: '',
    performedAt: toLocalInput(Date.now()).slice(0, 10),
    dueAt: '',
    asFound: '',
  });
  const [force, setForce] = useState([
    emptyForce(
      usual === 'torque' ? 'torque' : 'tension',
      usual === 'torque' ? torque : capacity,
      usual === 'torque' ? 'N·m' : 'N',
    ),
  ]);
  const [extension, setExtension] = useState(
    emptyExtension(Number((item.details['gaugeLengthsMm'] as number[] | undefined)?.[0] ?? 50)),
  );
  const [ranges, setRanges] = useState<RangeTyped[]>([{ direction: usual, className: '1', from: '', to: '' }]);
  const [file, setFile] = useState<File | null>(null);
  const evaluate = useApiMutation<EvaluationView>([]);
  const save = useApiMutation<{ impact: unknown }>(['items', 'plan'], ({ impact }) => {
    toast(`The calibration of ${item.tag} is kept.`);
    go(impact ? `/register/items/${item.id}/impact` : `/register/items/${item.id}`);
  });
  const [unsent, setUnsent] = useState<Error | null>(null);
  const refused = unsent ?? save.error ?? evaluate.error;
  const wrong = refused instanceof ApiError ? refused.fields : {};
  const set = (part: Partial<typeof head>) => setHead({ ...head, ...part });
  const readings = isExtensometer
    ? { extensionReadings: extensionBody(extension) }
    : { forceReadings: force.map(forceBody) };

  /** Says what cannot be read of the readings. @returns whether they can all be sent */
  function areReadable(): boolean {
    const problems =
      by === 'certificate' ? [] : isExtensometer ? extensionProblems(extension) : force.flatMap(forceProblems);
    setUnsent(problems.length > 0 ? new Error(problems.join(' ')) : null);
    return problems.length === 0;
  }

  async function keep() {
    if (!areReadable()) return;
    try {
      const stored = file
        ? await call(api('POST /files', { name: file.name, body: file }), {
            ...(file.type ? { type: file.type } : {}),
            key: newIdempotencyKey(),
          })
        : null;
      const body: RecordCalibrationBody = {
        ...{ standard: head.standard, certificateNumber: head.certificateNumber, laboratory: head.laboratory },
        performedAt: head.performedAt,
        ...(head.dueAt ? { dueAt: head.dueAt } : {}),
        ...(by === 'readings' ? readings : { ranges: ranges.map(rangeOf) }),
        asFound: head.asFound as RecordCalibrationBody['asFound'],
        ...(stored ? { certificateFileId: stored.id } : {}),
      };
      save.mutate(api('POST /items/{id}/calibrations', { id: item.id, body }));
    } catch (error) {
      setUnsent(error as Error);
    }
  }

  return (
    <>
      <TitleBlock
        title={`Calibration of ${item.tag}`}
        back={{ to: `/register/items/${item.id}`, label: `${item.tag} ${item.name}` }}
      >
        {by === 'readings' && (
          <button
            type="button"
            className={ui.button}
            disabled={evaluate.isPending}
            onClick={() => {
              if (areReadable())
                evaluate.mutate(api('POST /calibrations/evaluate', { body: { standard: head.standard, ...readings } }));
            }}
          >
            Work out class and range
          </button>
        )}
        <button type="button" className={ui.buttonMain} disabled={save.isPending} onClick={() => void keep()}>
          Keep it
        </button>
      </TitleBlock>
      <div className={ui.stackWide}>
        <ErrorMessage error={refused} />
        {Object.keys(wrong).length > 0 && (
          <ul className={clsx(ui.small, ui.act)}>
            {Object.values(wrong).map((sentence) => (
              <li key={sentence}>▲ {sentence}</li>
            ))}
          </ul>
        )}
        <div className={ui.fields}>
          <TextField
            label="Certificate number"
            value={head.certificateNumber}
            onChange={(certificateNumber) => set({ certificateNumber })}
            wrong={wrong['certificateNumber']}
          />
          <TextField
            label="Calibration laboratory"
            value={head.laboratory}
            onChange={(laboratory) => set({ laboratory })}
            wrong={wrong['laboratory']}
          />
          <TextField
            label="Standard"
            value={head.standard}
            onChange={(standard) => set({ standard })}
            list={['ISO 7500-1', 'ISO 9513', 'ASTM E83']}
            wrong={wrong['standard']}
          />
          <TextField
            label="Performed on"
            type="date"
            value={head.performedAt}
            onChange={(performedAt) => set({ performedAt })}
            wrong={wrong['performedAt']}
          />
          <TextField
            label="Due"
            type="date"
            required={false}
            value={head.dueAt}
            onChange={(dueAt) => set({ dueAt })}
            help={`Left empty: ${item.calibrationIntervalMonths ?? 12} months on.`}
            wrong={wrong['dueAt']}
          />
          <SelectField
            label="As found"
            none="Choose …"
            value={head.asFound}
            onChange={(asFound) => set({ asFound })}
            choices={[
              { value: 'within', label: 'within tolerance' },
              { value: 'out-of-tolerance', label: 'out of tolerance' },
              { value: 'not-recorded', label: 'not recorded' },
            ]}
            help="Before any adjustment. Out of tolerance: you are led to everything it touched."
            wrong={wrong['asFound']}
          />
          <div className={ui.field}>
            <label htmlFor="certificate">Certificate as a file</label>
            <input id="certificate" type="file" onChange={(event) => setFile(event.target.files?.[0] ?? null)} />
          </div>
        </div>
        {readable && (
          <div className={ui.tabs} role="tablist" aria-label="Where class and range come from">
            <button type="button" role="tab" aria-selected={by === 'readings'} onClick={() => setBy('readings')}>
              From readings
            </button>
            <button type="button" role="tab" aria-selected={by === 'certificate'} onClick={() => setBy('certificate')}>
              As the certificate states
            </button>
          </div>
        )}
        {by === 'readings' && isExtensometer && <ExtensionReadingsForm typed={extension} onChange={setExtension} />}
        {by === 'readings' &&
          !isExtensometer &&
          force.map((typed, index) => (
            <ForceReadingsForm
              key={index}
              typed={typed}
              onChange={(next) => setForce(force.map((each, at) => (at === index ? next : each)))}
            />
          ))}
        {by === 'readings' && !isExtensometer && usual !== 'torque' && force.length < 2 && (
          <div>
            <button
              type="button"
              className={ui.button}
              onClick={() => setForce([...force, emptyForce('compression', capacity, 'N')])}
            >
              The other direction as well
            </button>
          </div>
        )}
        {by === 'certificate' && <Ranges ranges={ranges} onChange={setRanges} />}
        {by === 'readings' && evaluate.data && <EvaluationTable evaluation={evaluate.data} />}
      </div>
    </>
  );
}

function rangeOf({ direction, className, from, to }: RangeTyped): CalibratedRangeView {
  const mark = decimalMarkIn([from, to]);
  const figure = (text: string) => {
    const number = parseHinted(text, { mark });
    return 'reason' in number ? NaN : number.value;
  };
  return {
    direction: direction as CalibratedRangeView['direction'],
    className: className || null,
    from: figure(from),
    to: figure(to),
    unit: UNIT_OF[direction] ?? 'N',
  };
}

function Ranges({ ranges, onChange }: { ranges: readonly RangeTyped[]; onChange: (ranges: RangeTyped[]) => void }) {
  const set = (at: number, part: Partial<RangeTyped>) =>
    onChange(ranges.map((range, index) => (index === at ? { ...range, ...part } : range)));
  return (
    <div className={ui.stack}>
      {ranges.map((range, index) => (
        <div className={ui.fields} key={index}>
          <SelectField
            label="Of"
            value={range.direction}
            onChange={(direction) => set(index, { direction })}
            choices={CALIBRATED_QUANTITIES.map((value) => ({ value, label: value }))}
          />
          <TextField
            label="Class"
            required={false}
            value={range.className}
            onChange={(className) => set(index, { className })}
          />
          <TextField
            label={`From, ${UNIT_OF[range.direction] ?? ''}`}
            value={range.from}
            onChange={(from) => set(index, { from })}
          />
          <TextField
            label={`To, ${UNIT_OF[range.direction] ?? ''}`}
            value={range.to}
            onChange={(to) => set(index, { to })}
          />
        </div>
      ))}
      <div>
        <button
          type="button"
          className={clsx(ui.button, ui.buttonSmall)}
          onClick={() => onChange([...ranges, { direction: 'compression', className: '1', from: '', to: '' }])}
        >
          Another range
        </button>
      </div>
    </div>
  );
}
