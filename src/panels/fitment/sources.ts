/** Where the numbers of the sheet come from, said beside them. */
export interface Source {
  readonly what: string;
  readonly from: string;
}

/** By the group of figures they belong to. */
export const SOURCES: Readonly<Record<string, readonly Source[]>> = {
  fields: [
    {
      what: 'Section widths that end in 5, aspects in fives, rim codes; flotation sizes in halves of an inch',
      from: 'ISO 4000-1, ETRTO and the American tyre and rim yearbooks, from memory. No catalogue is kept here: a size of the series need not be on sale.',
    },
    {
      what: 'Backspacing = offset + half the rim’s width + half an inch; with a drawn contour, to the edge of the lip that was drawn',
      from: 'trade practice for the half inch, from memory; no source.',
    },
    {
      what: 'A candidate keeps the present wheel’s thickness; disc and stick-on weights only on the same rim; the brake stays at the hub',
      from: 'what a drawing of another wheel cannot know. Check weights by hand at both locks.',
    },
    {
      what: 'Load index, speed mark and tyre pressure',
      from: 'out of scope: nothing here says what a tyre may carry. Ask the makers of tyre, wheel and vehicle.',
    },
  ],
  Tyre: [
    {
      what: 'Overall diameter of a metric size: rim code × 25.4 mm + 2 × width × aspect',
      from: 'UN Regulation 30, paragraph 6.1.2, from memory; agrees with one maker’s published table to 0.1 in.',
    },
    {
      what: 'Section width on another rim: 0.4 mm per mm of rim width, from a measuring rim of 0.70 of the width (0.85 below 50-series)',
      from: 'UN Regulation 30, paragraph 6.1.1.1, as published; the measuring rim from published tables (ISO 4000-1 and ETRTO list it, from memory).',
    },
    {
      what: 'Flotation sizes: diameter and width as written, on any rim',
      from: 'nominal. Makers’ tyres often measure 6 to 20 mm less; UN Regulation 54, annex 5, lists values below nominal, from memory.',
    },
    {
      what: 'Rim width over the tyre’s nominal width: 0.65 to 0.94 for metric, 0.63 to 0.88 for flotation sizes',
      from: 'all sizes of one maker’s published table. Each size has a narrower range of its own.',
    },
    {
      what: 'Revolutions: rolling circumference 3.05 × overall diameter, not the loaded radius',
      from: 'ETRTO, radial tyres at 60 km/h, from memory.',
    },
    {
      what: 'Speedometer error: (indicated − true) / true, by the ratio of overall diameters',
      from: 'arithmetic; taken to read true with the present tyre.',
    },
    {
      what: 'Loaded radius: the model’s, in proportion to the diameter; else 0.96 of half the diameter',
      from: 'common practice, no source.',
    },
  ],
  'Place, from the hub face': [
    {
      what: 'Specified rim diameters of 5° drop-centre rims, by inch code',
      from: 'ISO 4000-2 and the ETRTO rim tables, from memory.',
    },
    { what: 'Flange height 17.3 mm (J)', from: 'rim tables, from memory; older ones have 17.5.' },
    {
      what: 'Contour of the barrel where none is drawn, metal 6 mm thick',
      from: 'common practice, no source: measure the wheel and move the contour’s points.',
    },
    {
      what: 'Poke: how much farther out than now the outermost of tyre and wheel stands',
      from: 'arithmetic along the hub axis.',
    },
  ],
  'Steering, at the set pose': [
    {
      what: 'Track, scrub radius, caster trail at ride height, straight ahead, in the wheel’s own frame',
      from: 'ISO 8855 terms, by this bench’s solver. Scrub radius and trail change with lock.',
    },
  ],
  Gaps: [
    {
      what: 'Least distances over all travel and lock, from surface to surface',
      from: 'this bench’s solver: the smallest found, and a bound no pose goes below, by branch and bound. The range is the model’s travel, not cut by stops; parts joined to each other are not paired. No bulge and no deflection of the tyre.',
    },
    {
      what: 'Wanted gap',
      from: 'the model’s; where it states none 6 mm, common practice, no source. One wheel maker publishes 0.25 in to any part.',
    },
  ],
  'Hub and bearing': [
    {
      what: 'The bearing’s middle behind the hub face, 60 mm where it was not measured',
      from: 'common practice, no source. The lever says how the wheel’s push moves; strength and life of the bearing are not checked.',
    },
  ],
};
