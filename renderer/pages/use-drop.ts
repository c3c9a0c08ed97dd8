import { useEffect, useRef, useState } from 'react';

const hasFiles = (data: DataTransfer | null): boolean => data?.types.includes('Files') ?? false;

/** Files dropped anywhere on the window, or pasted, go to `onFiles`. True while files hang over the window. */
export function useDrop(onFiles: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  const take = useRef(onFiles);
  useEffect(() => {
    take.current = onFiles;
  });
  useEffect(() => {
    const onOver = (event: DragEvent) => {
      if (!hasFiles(event.dataTransfer)) return;
      // Or the browser would open the file in place of the program.
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!hasFiles(event.dataTransfer)) return;
      event.preventDefault();
      setOver(false);
      take.current([...(event.dataTransfer?.files ?? [])]);
    };
    const onPaste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      take.current(files);
    };
    const listeners = { dragover: onOver, dragleave: onLeave, drop: onDrop, paste: onPaste } as const;
    for (const [name, listener] of Object.entries(listeners))
      window.addEventListener(name, listener as EventListener);
    return () => {
      for (const [name, listener] of Object.entries(listeners))
        window.removeEventListener(name, listener as EventListener);
    };
  }, []);
  return over;
}
