import type { Page } from '@playwright/test';
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
