import { keys as say } from '../../texts/keys.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Key } from '../../ui/Key.tsx';
import { common } from '../../texts/common.ts';

export type ThemeName = keyof typeof say.themes;

export interface KeysDialogProps {
  readonly open: boolean;
  readonly theme: ThemeName;
  readonly onTheme: (theme: ThemeName) => void;
  readonly onClose: () => void;
}

/** Every key of the program on one page, and whether it is light or dark. */
export function KeysDialog({ open, theme, onTheme, onClose }: KeysDialogProps) {
  return (
    <Dialog open={open} title={say.title} onClose={onClose} wide>
      <p className="how">{say.how}</p>
      <div className="keys-map">
        {say.sections.map((section) => (
          <section key={section.name} aria-label={section.name}>
            <h3>{section.name}</h3>
            <dl>
              {section.keys.map(([key, does]) => (
                <div key={key}>
                  <dt>
                    <kbd>{key}</kbd>
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
        <section aria-label={say.theme}>
          <h3>{say.theme}</h3>
          <Choice
            name={say.theme}
            options={(['system', 'light', 'dark'] as const).map((value) => ({
              value,
              label: say.themes[value],
            }))}
            value={theme}
            onChange={onTheme}
          />
        </section>
      </div>
      <div className="keys">
        <Key look="go" onPress={onClose} hint="Esc">
          {common.close}
        </Key>
      </div>
    </Dialog>
  );
}
