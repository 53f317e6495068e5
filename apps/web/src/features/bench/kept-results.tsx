import { clsx } from 'clsx';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';
import type { Specimen } from './typed-figures.js';

/** The results of a specimen that the server has. */
export function KeptResults({ specimen }: { specimen: Specimen }) {
  return (
    <table>
      <caption>Saved for {specimen.label}</caption>
      <tbody>
        {specimen.results.map(({ key, label, value, unit, origin, flags }) => (
          <tr key={key}>
            <th>{label}</th>
            <td className={ui.num}>
              {formatNumber(value, 5)} {unit}
            </td>
            <td className={clsx(ui.small, ui.soft)}>
              {origin} {flags.length > 0 && <span className={ui.act}>▲ {flags.join(', ')}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
