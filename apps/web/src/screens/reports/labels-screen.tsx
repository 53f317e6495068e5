import QRCode from 'qrcode';
import { useEffect, useState } from 'react';
import { Empty } from '../../ui/fetch-states.js';
import { TitleBlock } from '../../ui/title-block.js';
import { ui } from '../../ui/styles.js';
import styles from './labels.module.css';

/** Labels to print, 62 × 29 mm: the code that the bench's reader types, and the same in letters. */
export function LabelsScreen() {
  const tags = (new URLSearchParams(location.search).get('of') ?? '').split(',').filter(Boolean);
  return (
    <>
      <TitleBlock title="Labels" cells={[['labels', tags.length]]}>
        <button type="button" className={ui.buttonMain} disabled={tags.length === 0} onClick={() => print()}>
          Print
        </button>
      </TitleBlock>
      {tags.length === 0 && <Empty>Choose the labels to print at an item, or at a batch of a request.</Empty>}
      <div className={styles.labels}>
        {tags.map((tag) => (
          <Label key={tag} tag={tag} />
        ))}
      </div>
    </>
  );
}

function Label({ tag }: { tag: string }) {
  const [code, setCode] = useState<{ size: number; path: string } | null>(null);
  useEffect(() => setCode(drawn(tag)), [tag]);
  return (
    <div className={styles.label}>
      {code && (
        <svg viewBox={`0 0 ${code.size} ${code.size}`} role="img" aria-label={`QR code of ${tag}`}>
          <path d={code.path} fill="#000" />
        </svg>
      )}
      <strong>{tag}</strong>
    </div>
  );
}

function drawn(tag: string): { size: number; path: string } {
  const { modules } = QRCode.create(tag, { errorCorrectionLevel: 'M' });
  let path = '';
  for (let row = 0; row < modules.size; row++) {
    for (let column = 0; column < modules.size; column++) {
      if (modules.get(row, column)) path += `M${column} ${row}h1v1h-1z`;
    }
  }
  return { size: modules.size, path };
}
