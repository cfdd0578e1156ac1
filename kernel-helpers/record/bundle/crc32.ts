const table: Uint32Array = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/**
 * The checksum of a file in a ZIP archive.
 *
 * CRC-32 with the reflected polynomial 0xEDB88320, all bits set at the start and turned round at the end.
 *
 * @returns the checksum [-], 0 to 2³² − 1
 * @example crc32(new TextEncoder().encode("123456789")) // 3421780262
 * @source ISO/IEC 13239:2002 (HDLC), 4.2.5.2; APPNOTE.TXT 6.3.10, section 4.4.7. Node 20 has no such function of its own
 */
export function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = (value >>> 8) ^ table[(value ^ byte) & 0xff]!;
  return (value ^ 0xffffffff) >>> 0;
}
