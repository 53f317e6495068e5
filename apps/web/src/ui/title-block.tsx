import { useEffect } from 'react';
import type { ReactNode } from 'react';
import { Link } from 'wouter';

/** The head of every screen, laid out like the title block of a drawing. */
export function TitleBlock({
  title,
  back,
  cells = [],
  children,
}: {
  title: string;
  back?: { to: string; label: string };
  cells?: readonly (readonly [caption: string, value: ReactNode])[];
  children?: ReactNode;
}) {
  useEffect(() => {
    document.title = `${title} · Loadtrain`;
  }, [title]);
  return (
    <header className="title-block">
      <div className="title">
        {back && (
          <Link className="back soft" href={back.to}>
            {back.label}
          </Link>
        )}
        <h1>{title}</h1>
      </div>
      {cells.map(([caption, value]) => (
        <div className="cell" key={caption}>
          <span className="caption">{caption}</span>
          <span>{value}</span>
        </div>
      ))}
      {children && <div className="acts no-print">{children}</div>}
    </header>
  );
}
