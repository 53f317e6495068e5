import { clsx } from 'clsx';
import type { BatchDraft } from '../../features/matching/batch-draft.js';
import { ui } from '../../ui/styles.js';

interface Props {
  batches: readonly BatchDraft[];
  at: number;
  onChoose: (at: number) => void;
  onAnother: () => void;
}

/** The batches of a request, and a button for another one. */
export function BatchTabs({ batches, at, onChoose, onAnother }: Props) {
  return (
    <div className={ui.row}>
      <div className={clsx(ui.tabs, ui.grow)} role="tablist" aria-label="Batches">
        {batches.map((each, index) => (
          <button key={each.key} type="button" role="tab" aria-selected={index === at} onClick={() => onChoose(index)}>
            {each.label || `Batch ${index + 1}`}
          </button>
        ))}
      </div>
      <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={onAnother}>
        + another like this
      </button>
    </div>
  );
}
