import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../record/read-pdf.ts';
import { ask, makeFolder, own, type RunningHost, startHost } from './running-host.ts';

/** The put-back sheet by the command line, and from the running host as the window asks for it. */

const MAIN = join(import.meta.dirname, '..', '..', 'core', 'cli', 'main.ts');
let folder: ReturnType<typeof makeFolder>;
let jobId = '';

function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((done) => {
    const full = [MAIN, ...args, '--workshop', join(folder.path, 'workshop')];
    execFile(process.execPath, full, (error, out, err) =>
      done({ code: error === null ? 0 : Number(error.code), out, err }),
    );
  });
}

beforeAll(async () => {
  folder = makeFolder();
  await run('job-add', 'Gearbox of a winch');
  await run('log', 'belt guard, 4 M6x16 hex 10', '6 M8x25 hex 13, bag 3, 25 Nm', '+ side cover, gasket');
  jobId = (JSON.parse((await run('jobs', '--json')).out) as { job: { id: string } }[])[0]?.job.id ?? '';
});
afterAll(() => folder.remove());

describe('sheet by command', () => {
  it('writes all that is left, or one step, as a PDF where it is told', async () => {
    const file = join(folder.path, 'all.pdf');
    const said = await run('sheet', '--out', file);
    expect(said).toMatchObject({ code: 0, out: expect.stringContaining(file) });
    const text = (await readPdf(readFileSync(file))).map((page) => page.text).join(' ');
    expect(text).toContain('Side cover');
    expect(text).toContain('Belt guard');
    const one = join(folder.path, 'one.pdf');
    expect((await run('sheet', '--step', '2', '--light', '--out', one)).code).toBe(0);
    const pages = await readPdf(readFileSync(one));
    expect(pages).toHaveLength(1);
    expect(pages[0]?.text).toContain('Belt guard');
    expect(pages[0]?.text).not.toContain('gasket');
  });

  it('says what was expected where it cannot', async () => {
    expect(await run('sheet')).toMatchObject({ code: 2, err: expect.stringMatching(/Expected --out/) });
    const file = join(folder.path, 'none.pdf');
    expect(await run('sheet', '--step', 'x', '--out', file)).toMatchObject({ code: 2 });
    const far = await run('sheet', '--step', '9', '--out', file);
    expect(far).toMatchObject({ code: 1, out: expect.stringMatching(/from 1 to 2, got 9/) });
    const lost = join(folder.path, 'no-such-folder', 'x.pdf');
    expect(await run('sheet', '--out', lost)).toMatchObject({
      code: 1,
      out: expect.stringMatching(/a folder that is there/),
    });
    const taken = join(folder.path, 'folder.pdf');
    mkdirSync(taken);
    expect(await run('sheet', '--out', taken)).toMatchObject({ code: 1 });
    expect(existsSync(file)).toBe(false);
  });
});

function bytesOf(host: RunningHost, path: string): Promise<{ type: string; bytes: Buffer }> {
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port: host.port, path, headers: own(host), setHost: false, agent: false },
      (answer) => {
        const chunks: Buffer[] = [];
        answer.on('data', (chunk: Buffer) => chunks.push(chunk));
        answer.on('end', () =>
          resolve({ type: String(answer.headers['content-type']), bytes: Buffer.concat(chunks) }),
        );
      },
    );
    asked.on('error', reject);
    asked.end();
  });
}

describe('sheet from the running host', () => {
  it('is a PDF for a window with its session, and nothing for anybody else', async () => {
    const host = await startHost({ folder: folder.path });
    try {
      const { type, bytes } = await bytesOf(host, `/sheet/${jobId}/all`);
      expect(type).toBe('application/pdf');
      expect((await readPdf(bytes)).map((page) => page.text).join(' ')).toContain('Side cover');
      const stranger = await ask(host.port, 'GET', `/sheet/${jobId}/all`, { ...own(host), Cookie: '' });
      expect(stranger.status).toBe(401);
      const none = await ask(host.port, 'GET', `/sheet/${jobId}/99`, own(host));
      expect(none.status).toBe(404);
      expect(JSON.parse(none.body)).toMatchObject({ sentence: expect.stringMatching(/from 1 to 2/) });
      const lost = await ask(host.port, 'GET', `/sheet/${jobId.replaceAll(/\d/g, '0')}/all`, own(host));
      expect(lost.status).toBe(404);
    } finally {
      await host.end();
    }
  });
});
