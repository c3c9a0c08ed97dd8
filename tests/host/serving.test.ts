import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { actorOf } from '../../core/host/app.ts';
import { type Change, changeStreams } from '../../core/host/change-stream.ts';
import { contentPolicy, securityHeaders } from '../../core/host/headers.ts';
import { ticketFile } from '../../core/host/pages.ts';
import { rendererFiles } from '../../core/host/renderer-files.ts';

describe('the files of the screens', () => {
  let dir = '';
  beforeEach(() => {
    const root = mkdtempSync(join(tmpdir(), 'everybolt-files-'));
    dir = join(root, 'renderer');
    mkdirSync(join(dir, 'assets'), { recursive: true });
    writeFileSync(join(dir, 'index.html'), '<html><head><title>x</title></head></html>');
    writeFileSync(join(dir, 'assets', 'a.js'), 'a');
    writeFileSync(join(dir, 'assets', 'a.exe'), 'a');
    writeFileSync(join(root, 'secret.js'), 'secret');
    symlinkSync(join(root, 'secret.js'), join(dir, 'assets', 'link.js'));
  });
  afterEach(() => {
    rmSync(join(dir, '..'), { recursive: true, force: true });
  });

  it('are found by their place in the list, with their type', async () => {
    const files = rendererFiles(dir);
    expect(await files.file('assets/a.js')).toEqual({
      bytes: new TextEncoder().encode('a'),
      type: 'text/javascript; charset=utf-8',
    });
  });
  it.each([
    '../secret.js',
    'assets/../../secret.js',
    'assets/link.js',
    'assets/a.exe',
    'assets',
    '',
    '/etc/passwd',
    'assets\\a.js',
  ])('%s is none of them', async (path) => {
    expect(await rendererFiles(dir).file(path)).toBeNull();
  });
  it('are listed anew with the page, since a build changes their names', async () => {
    const files = rendererFiles(dir);
    expect(await files.file('assets/b.js')).toBeNull();
    writeFileSync(join(dir, 'assets', 'b.js'), 'b');
    await files.index('n');
    expect((await files.file('assets/b.js'))?.bytes).toEqual(new TextEncoder().encode('b'));
  });
  it('give the page its nonce for styles', async () => {
    expect(await rendererFiles(dir).index('bm9uY2U=')).toContain(
      '<head><meta property="csp-nonce" nonce="bm9uY2U=">',
    );
  });
  it('may not be built yet', async () => {
    expect(await rendererFiles(join(dir, 'none')).index('n')).toBeNull();
  });
});

describe('the stream of changes', () => {
  const source = () => {
    const listeners = new Set<(change: Change) => void>();
    return {
      listeners,
      changes: {
        subscribe: (listener: (change: Change) => void) => {
          listeners.add(listener);
          return () => void listeners.delete(listener);
        },
      },
      lastSeq: () => 41,
    };
  };
  const text = async (reader: ReadableStreamDefaultReader<Uint8Array>) =>
    new TextDecoder().decode((await reader.read()).value);

  it('says first how far the journal is, then each change', async () => {
    const from = source();
    const reader = changeStreams(from).open()?.getReader();
    if (!reader) throw new Error('Expected a stream, got none.');
    expect(await text(reader)).toBe('retry: 1000\nid: 41\ndata: {"seq":41,"chain":""}\n\n');
    for (const listener of from.listeners) listener({ seq: 42, chain: 'job' });
    expect(await text(reader)).toBe('id: 42\ndata: {"seq":42,"chain":"job"}\n\n');
  });
  it('stops listening when the window goes, and ends when the host stops', async () => {
    const from = source();
    const streams = changeStreams(from);
    await streams.open()?.cancel();
    expect(from.listeners.size).toBe(0);
    const reader = streams.open()?.getReader();
    await reader?.read();
    streams.close();
    expect((await reader?.read())?.done).toBe(true);
    expect(from.listeners.size).toBe(0);
  });
  it('lets a window go that does not read', async () => {
    const from = source();
    const reader = changeStreams(from).open()?.getReader();
    for (let seq = 0; seq < 10_000; seq++)
      for (const listener of from.listeners) listener({ seq, chain: 'x'.repeat(36) });
    expect(from.listeners.size).toBe(0);
    await reader?.cancel();
  });
  it('is not opened without end', () => {
    const streams = changeStreams(source());
    const opened = Array.from({ length: 40 }, () => streams.open());
    expect(opened.filter((stream) => stream === null)).toHaveLength(8);
    streams.close();
  });
  it('says that it is alive while nothing happens', async () => {
    vi.useFakeTimers();
    const reader = changeStreams(source()).open()?.getReader();
    if (!reader) throw new Error('Expected a stream, got none.');
    await text(reader);
    vi.advanceTimersByTime(20_000);
    expect(await text(reader)).toBe(': still here\n\n');
    vi.useRealTimers();
    await reader.cancel();
  });
});

describe('headers', () => {
  it('allow nothing first, no inline script, no eval, no other host', () => {
    const policy = contentPolicy('n');
    expect(policy.split('; ')[0]).toBe("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|http|\*/);
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).toContain("base-uri 'none'");
  });
  it('let a page with a form say its origin, and no other page', () => {
    expect(securityHeaders({ nonce: 'n' })['Referrer-Policy']).toBe('no-referrer');
    expect(securityHeaders({ nonce: 'n', ownReferrer: true })['Referrer-Policy']).toBe('same-origin');
  });
});

describe('who acts', () => {
  it('is an id or nobody', () => {
    expect(actorOf('0190f3c2-7b1a-7c3d-8e4f-001122334455')).toBe('0190f3c2-7b1a-7c3d-8e4f-001122334455');
    for (const header of [undefined, '', ' ', 'a b', '../x', 'a'.repeat(65), '<b>', 'a\n'])
      expect(actorOf(header)).toBeNull();
  });
});

describe('the file that carries a ticket', () => {
  it('holds it in a form, not in an address', () => {
    const html = ticketFile('http://eb-0.localhost:1', 'secret');
    expect(html).toContain('method="post" action="http://eb-0.localhost:1/session/ticket"');
    expect(html).toContain('name="ticket" value="secret"');
    expect(html).not.toMatch(/[?&]ticket=/);
  });
  it('writes signs of markup as signs', () => {
    expect(ticketFile('http://x"><script>', '"><b>')).not.toMatch(/"><script>|"><b>/);
  });
});
