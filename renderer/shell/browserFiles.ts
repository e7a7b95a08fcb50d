/** Lets the user choose a file by the browser's own dialog; null when nothing was chosen. */
export function chooseFile(accept: string): Promise<{ readonly name: string; readonly content: Uint8Array } | null> {
  return new Promise((resolve, reject) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => {
      const [file] = input.files ?? [];
      if (!file) return resolve(null);
      file.arrayBuffer().then((bytes) => resolve({ name: file.name, content: new Uint8Array(bytes) }), reject);
    });
    input.click();
  });
}

/** Hands a text to the browser to be saved. */
export function offerFile(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has its own hold on the content once the download has begun.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
