import type { Locator, Page } from '@playwright/test';
import type { JobView } from '../../../core/contract/views.ts';

/** The job as the program answers it to its own window. */
export async function viewOf(page: Page): Promise<JobView> {
  return page.evaluate(async () => {
    const { state } = JSON.parse(localStorage.getItem('everybolt-place') ?? '{}') as {
      state: { jobId: string };
    };
    const reply = await fetch('/rpc/jobs/view', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ json: { jobId: state.jobId } }),
    });
    const { json } = (await reply.json()) as { json: { value: JobView } };
    return json.value;
  });
}

/** Whether the middle and the last line of a thing can be seen: nothing else lies on them. */
export const inSight = (thing: Locator): Promise<boolean> =>
  thing.evaluate((node) => {
    const { left, width, top, bottom, height } = node.getBoundingClientRect();
    return [top + 4, top + height / 2, bottom - 4].every((y) => {
      const on = document.elementFromPoint(left + width / 2, y);
      return on !== null && (node.contains(on) || on.contains(node));
    });
  });
