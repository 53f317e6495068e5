import { clsx } from 'clsx';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { urlOf } from '../../api-client/call.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';

/** The calibrations of an item: until when each holds, what it verified, and what was found. */
export function ItemCalibrations({ item }: { item: ItemDetail }) {
  if (!item.needsCalibration) return null;
  return (
    <section className={clsx(ui.stackTight, ui.scrollX)}>
      <h2>Calibrations</h2>
      {item.calibrations.length === 0 ? (
        <p className={ui.act}>▲ None is entered. Until one is, it fits no job that needs a verified range.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th>Performed</th>
              <th>Due</th>
              <th>Class and verified range</th>
              <th>Certificate</th>
              <th>Found</th>
            </tr>
          </thead>
          <tbody>
            {item.calibrations.map((calibration) => (
              <CalibrationRow key={calibration.id} calibration={calibration} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function CalibrationRow({ calibration }: { calibration: ItemDetail['calibrations'][number] }) {
  const { day } = useMoments();
  return (
    <tr>
      <th>{day(calibration.performedAt)}</th>
      <td>{day(calibration.dueAt)}</td>
      <td>
        {calibration.ranges.map(({ direction, className, from, to, unit }) => (
          <div key={direction + String(className) + String(from)} className={ui.small} style={{ whiteSpace: 'nowrap' }}>
            {direction} {className ?? 'no class'}:{' '}
            <span className={ui.fig}>{`${formatNumber(from)}–${formatNumber(to)} ${unit}`}</span>
          </div>
        ))}
        <span className={clsx(ui.soft, ui.small)}>{calibration.standard}</span>
      </td>
      <td>
        {calibration.certificateFileId ? (
          <a href={urlOf(api('GET /files/{id}', { id: calibration.certificateFileId }))}>
            {calibration.certificateNumber}
          </a>
        ) : (
          calibration.certificateNumber
        )}
        <br />
        <span className={clsx(ui.soft, ui.small)}>{calibration.laboratory}</span>
      </td>
      <td className={calibration.asFound === 'out-of-tolerance' ? ui.act : undefined}>
        {calibration.asFound === 'out-of-tolerance'
          ? '▲ out of tolerance'
          : calibration.asFound === 'within'
            ? 'within'
            : 'not recorded'}
      </td>
    </tr>
  );
}
