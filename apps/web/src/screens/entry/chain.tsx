import { clsx } from 'clsx';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { NoticeLink } from '../../features/notices/notice-link.js';
import { useSession } from '../../features/session/session.js';
import { showTheme, themeNow } from '../../ui/theme.js';
import type { Theme } from '../../ui/theme.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ChainDrawing, Coupling } from './chain-part.js';
import { DESKS } from './desks.js';
import type { Desk } from './desks.js';
import { ui } from '../../ui/styles.js';
import styles from './navigation.module.css';

/** The way around: a load train from crosshead to base, each desk a link of it, the current one clamped. */
export function Chain({ connected }: { connected: boolean }) {
  const { person, lab } = useSession();
  const [path] = useLocation();
  const may = (roles: readonly string[] | undefined) => !roles || person.roles.some((role) => roles.includes(role));
  return (
    <nav className={clsx(styles.chain, ui.noPrint)} aria-label="Desks">
      <div className={styles.crosshead}>
        <Link href="/" className={styles.product}>
          Loadtrain
        </Link>
        <span className={clsx(ui.small, styles.lab)}>{lab.name}</span>
      </div>
      <ol>
        {DESKS.filter((desk) => may(desk.roles)).map((desk) => (
          <DeskLink key={desk.key} desk={desk} path={path} may={may} />
        ))}
      </ol>
      <Coupling />
      <Base connected={connected} name={person.name} />
    </nav>
  );
}

function DeskLink({
  desk,
  path,
  may,
}: {
  desk: Desk;
  path: string;
  may: (roles: readonly string[] | undefined) => boolean;
}) {
  const here = path === `/${desk.key}` || path.startsWith(`/${desk.key}/`);
  const sheets = desk.sheets.filter((sheet) => may(sheet.roles));
  const best = sheets
    .filter(({ to }) => path === to || path.startsWith(`${to}/`))
    .sort((a, b) => b.to.length - a.to.length)[0];
  return (
    <li className={here ? styles.here : undefined}>
      <Coupling />
      <div className={styles.link}>
        <Link href={desk.to} className={styles.desk} aria-current={here ? 'true' : undefined}>
          <ChainDrawing part={desk.part} clamped={here} />
          <span>{desk.label}</span>
        </Link>
        {here && sheets.length > 1 && (
          <ul>
            {sheets.map((sheet) => (
              <li key={sheet.to}>
                <Link href={sheet.to} aria-current={sheet === best ? 'page' : undefined}>
                  {sheet.label}
                </Link>
              </li>
            ))}
          </ul>
        )}
      </div>
    </li>
  );
}

function Base({ connected, name }: { connected: boolean; name: string }) {
  const [theme, setTheme] = useState<Theme>(themeNow());
  const leave = useApiMutation(['session'], () => location.assign('/'));
  const other: Theme = theme === 'dark' ? 'light' : 'dark';
  return (
    <div className={styles.base}>
      <Link href="/access">
        <strong>{name}</strong>
      </Link>
      <NoticeLink />
      {!connected && <span className={clsx(ui.act, ui.small)}>▲ Not connected: what you see may be old.</span>}
      <div className={clsx(ui.row, styles.row)}>
        <button
          type="button"
          className={clsx(ui.buttonBare, ui.buttonSmall)}
          onClick={() => {
            showTheme(other, true);
            setTheme(other);
          }}
        >
          {other === 'dark' ? 'Dark' : 'Light'}
        </button>
        <button
          type="button"
          className={clsx(ui.buttonBare, ui.buttonSmall)}
          onClick={() => leave.mutate(api('DELETE /session'))}
        >
          Sign out
        </button>
      </div>
    </div>
  );
}
