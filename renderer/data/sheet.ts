import { sheet as say } from '../texts/sheet.ts';
import { journal } from './journal.ts';
import { saveFile } from './save.ts';

export interface SheetWish {
  readonly jobId: string;
  /** Number in the list; null: all that is left. */
  readonly step: number | null;
  readonly light: boolean;
}

/** Has the put-back sheet made and hands it over; a refusal is said in the status line. */
export async function fetchSheet(wish: SheetWish, name: string): Promise<void> {
  const path = [wish.jobId, wish.step ?? 'all', ...(wish.light ? ['light'] : [])].join('/');
  try {
    const answer = await fetch(`/sheet/${path}`);
    if (answer.ok) saveFile(name, await answer.blob());
    else {
      const { sentence } = (await answer.json()) as { sentence: string };
      journal.getState().refuse(sentence);
    }
  } catch {
    journal.getState().refuse(say.noAnswer);
  }
}
