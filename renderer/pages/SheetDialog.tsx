import { useState } from 'react';
import { fetchSheet } from '../data/sheet.ts';
import type { OpenJob } from '../data/job.ts';
import { sheet as say } from '../texts/sheet.ts';
import { Choice } from '../ui/Choice.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Key } from '../ui/Key.tsx';

interface SheetDialogProps {
  readonly job: OpenJob;
  /** Number of the step at hand in the list; null where none is at hand. */
  readonly step: number | null;
  readonly onClose: () => void;
}

/** Which steps, and how the photos are printed; then the PDF is made and handed over. */
export function SheetDialog({ job, step, onClose }: SheetDialogProps) {
  const [which, setWhich] = useState<'one' | 'all'>(step === null ? 'all' : 'one');
  const [manner, setManner] = useState<'grey' | 'light'>('grey');
  const [busy, setBusy] = useState(false);
  const make = async () => {
    setBusy(true);
    const wish = { jobId: job.id, step: which === 'one' ? step : null, light: manner === 'light' };
    await fetchSheet(wish, say.fileName(job.view.state.job.title));
    onClose();
  };
  return (
    <Dialog open title={say.title} onClose={onClose}>
      <p>{say.say}</p>
      <div className="sheet-choices">
        {step !== null && (
          <Choice
            name={say.which}
            value={which}
            options={[
              { value: 'one', label: say.steps.one },
              { value: 'all', label: say.steps.all },
            ]}
            onChange={setWhich}
            off={busy}
          />
        )}
        <Choice
          name={say.photos}
          value={manner}
          options={[
            { value: 'grey', label: say.manner.grey },
            { value: 'light', label: say.manner.light },
          ]}
          onChange={setManner}
          off={busy}
        />
      </div>
      <div className="keys">
        <Key look="go" large first off={busy} onPress={() => void make()}>
          {busy ? say.making : say.go}
        </Key>
      </div>
    </Dialog>
  );
}
