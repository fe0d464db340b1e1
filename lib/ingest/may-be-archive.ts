/** So many bytes are enough to tell. */
const FIRST_BYTES = 64;

const ZIP_HEAD = [0x50, 0x4b, 0x03, 0x04];

/** Whether bytes begin as a zip. */
export function isZip(bytes: Uint8Array): boolean {
  return ZIP_HEAD.every((byte, at) => bytes[at] === byte);
}

/**
 * Whether a file may be an archive, by its first bytes alone: a zip, or JSON text of an object. What it is, only reading all
 * of it tells; most files aren't even this.
 *
 * @param bytes the file, or its first 64 bytes
 */
export function mayBeArchive(bytes: Uint8Array): boolean {
  const start = new TextDecoder().decode(bytes.subarray(0, FIRST_BYTES)).trimStart();
  return isZip(bytes) || start.startsWith("{");
}
