/** What the corner is made of: every body is one mesh for all that is painted, and one for each material apart. */
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
  'scan',
  'envelope',
] as const;
export type MaterialName = (typeof MATERIAL_NAMES)[number];

/** Materials with a mesh of their own: cut off at the ground, seen through, seen from both sides, or inside others and so without a shadow. */
export const APART = [
  'tyre',
  'webbing',
  'cutMetal',
  'cutRubber',
  'obstacle',
  'scan',
  'envelope',
] as const;
export type ApartName = (typeof APART)[number];

/** Whether a material is painted together with the others of its body: opaque, and seen from outside only. */
export function isPainted(name: MaterialName): boolean {
  return !(APART as readonly MaterialName[]).includes(name);
}
