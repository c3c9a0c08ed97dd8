import { basename, join } from 'node:path';
import sharp from 'sharp';

/** Bare sharp, as it comes: one decoding, then the two renditions, which is the quickest way that it has to them. */
const dir = process.argv[2] ?? '.';

async function renditions(path: string): Promise<void> {
  const { data, info } = await sharp(path)
    .autoOrient()
    .resize(2048, 2048, { fit: 'inside' })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const raw = { width: info.width, height: info.height, channels: info.channels };
  await sharp(data, { raw })
    .jpeg({ quality: 80 })
    .toFile(join(dir, `${basename(path)}-2048.jpg`));
  await sharp(data, { raw })
    .resize(320, 320, { fit: 'inside' })
    .webp({ quality: 75, effort: 2 })
    .toFile(join(dir, `${basename(path)}-320.webp`));
}

process.on('message', ({ paths, atOnce }: { paths: string[]; atOnce: number }) => {
  const run = async () => {
    const [first] = paths;
    // The first picture of a process loads what it needs: not counted, as it is not for the import.
    if (first !== undefined) await renditions(first);
    const [since, spent] = [performance.now(), process.cpuUsage()];
    let next = 0;
    const work = async () => {
      for (let i = next++; i < paths.length; i = next++) await renditions(paths[i] as string);
    };
    await Promise.all(Array.from({ length: atOnce }, work));
    const { user, system } = process.cpuUsage(spent);
    process.send?.({ ms: performance.now() - since, cpuMs: (user + system) / 1000 });
  };
  void run();
});
process.send?.('ready');
