/** Opens a file in a tab of its own; a page that was made here gets no power over this one. */
export function showFile(content: string | Uint8Array, type: string): void {
  const part = typeof content === 'string' ? content : new Uint8Array(content);
  const url = URL.createObjectURL(new Blob([part], { type: `${type};charset=utf-8` }));
  open(url, '_blank', 'noopener');
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
