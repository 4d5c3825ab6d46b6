/** CRC-32 as in ISO/IEC 8802-3 (reflected polynomial 0xEDB88320), unsigned: any one to three changed bits show, of longer damage all but 1 in 2³². */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}
