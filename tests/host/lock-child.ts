import { takeLock } from '../../core/store/lock.ts';

/** A second process that takes the lock of a workshop, says what it got, and keeps it until it is ended. */
const [dir] = process.argv.slice(2);
if (dir === undefined) throw new Error('Expected a folder, got nothing.');
const taken = takeLock(dir);
if (taken.ok)
  taken.value.announce({
    address: 'http://eb-00000000000000000000.localhost:1',
    desk: '/desk',
    pid: process.pid,
  });
process.stdout.write(`${taken.ok ? 'taken' : taken.fault.code}\n`);
if (taken.ok) setInterval(() => {}, 1000);
