import { useDraft } from '../../data/draft.ts';
import { off as say } from '../../texts/off.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

interface SendDialogProps {
  readonly thingId: string;
  readonly name: string;
  /** `due`: "2026-11-20", or "" where no day was promised. */
  readonly onSend: (toWhom: string, due: string) => void;
  readonly onClose: () => void;
}

/** Sending something out: to whom and what for, and by when it was promised, where a day was. */
export function SendDialog({ thingId, name, onSend, onClose }: SendDialogProps) {
  const [toWhom, setToWhom] = useDraft(`send/${thingId}/whom`);
  const [due, setDue] = useDraft(`send/${thingId}/due`);
  const ready = toWhom.trim() !== '';
  const answer = () => {
    if (!ready) return;
    onSend(toWhom.trim(), due);
    setToWhom('');
    setDue('');
    onClose();
  };
  return (
    <Dialog open title={say.sendTitle(name)} onClose={onClose}>
      <form
        className="send-form"
        onSubmit={(event) => {
          event.preventDefault();
          answer();
        }}
      >
        <Field label={say.sendAsk} example={say.sendExample} value={toWhom} onChange={setToWhom} first />
        <Field label={say.sendDue} value={due} onChange={setDue} type="date" />
        <div className="keys">
          <Key look="go" large submits onPress={answer} off={!ready} hint="Enter">
            {say.sendGo}
          </Key>
        </div>
      </form>
    </Dialog>
  );
}
