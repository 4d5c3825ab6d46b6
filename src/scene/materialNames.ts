/** What the corner is made of: every body is drawn in one mesh per material it shows. */
export const MATERIAL_NAMES = [
  'arm',
  'knuckle',
  'steel',
  'dark',
  'rod',
  'spring',
  'rubber',
  'boot',
  'alloy',
  'tyre',
  'disc',
  'caliper',
  'fixed',
  'webbing',
  'stop',
  'cutMetal',
  'cutRubber',
  'obstacle',
  'envelope',
] as const;
export type MaterialName = (typeof MATERIAL_NAMES)[number];
