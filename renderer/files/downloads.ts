/*
 * Files where the browser gives no access to them: chosen by its dialog, and handed over as downloads.
 */

/** Lets the user choose a file by the browser's own dialog; null when nothing was chosen. */
export function chooseByInput(accept = '.json,application/json'): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null));
    input.click();
  });
}

/** Lets the user choose several files, or all files of a folder (not of the folders in it), by the browser's own dialog. */
export function chooseSeveral(from: 'files' | 'folder'): Promise<readonly File[]> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    if (from === 'files') {
      input.multiple = true;
      input.accept = '.json,application/json';
    } else {
      input.webkitdirectory = true;
    }
    input.addEventListener('cancel', () => resolve([]));
    input.addEventListener('change', () =>
      resolve([...(input.files ?? [])].filter(({ webkitRelativePath }) => webkitRelativePath.split('/').length <= 2)),
    );
    input.click();
  });
}

/** Hands content to the browser to be saved. Whether it arrived is not told. */
export function download(name: string, content: Uint8Array, mediaType = 'application/json'): void {
  // A copy: the content's buffer may be shared, which a blob does not take.
  const address = URL.createObjectURL(new Blob([content.slice()], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has its own hold on the content once the download has begun.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
