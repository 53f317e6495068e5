import { useState } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { useJobAct } from './sending.js';
import { WhyDialog } from './why-dialog.js';
import { api } from '../../api-client/api.js';

/** Something failed: the job is blocked, and the item that failed is out of the plan until its fault is closed. */
export function BlockDialog({ job, onClose }: { job: JobView; onClose: () => void }) {
  const act = useJobAct(job.id);
  const [itemId, setItemId] = useState('');
  const choices = [
    ...(job.frame ? [{ value: job.frame.id, label: `${job.frame.tag} ${job.frame.name}` }] : []),
    ...job.train.map((item) => ({ value: item.itemId, label: `${item.tag} ${item.name}` })),
  ];
  return (
    <WhyDialog
      title="Something failed"
      explain="The job is blocked and the manager plans it anew. What is entered so far stays. An item that failed is used by no job until its fault is closed."
      button="Block the job"
      usual={['Damaged', 'Missing', 'Does not hold', 'Shift check failed']}
      onWhy={(why) => act(api('POST /jobs/{id}/block', { id: job.id, body: { why, ...(itemId ? { itemId } : {}) } }))}
      onClose={onClose}
    >
      <SelectField
        label="What failed"
        none="Nothing of the train"
        value={itemId}
        onChange={setItemId}
        choices={choices}
      />
    </WhyDialog>
  );
}
