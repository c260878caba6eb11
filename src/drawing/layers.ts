/** What a mark shows; in a DXF file it decides the layer. */
export type LayerName =
  | 'outline'
  | 'opening'
  | 'form'
  | 'insert'
  | 'hole'
  | 'holding'
  | 'bar'
  | 'section'
  | 'dimension'
  | 'text'
  | 'datum'
  | 'frame';

/** Names of layers in a DXF file; a firm may put its own in their place. */
export type LayerNames = Readonly<Record<LayerName, string>>;

export const LAYER_NAMES: LayerNames = {
  outline: 'ONEPOUR-OUTLINE',
  opening: 'ONEPOUR-OPENING',
  form: 'ONEPOUR-FORM',
  insert: 'ONEPOUR-INSERT',
  hole: 'ONEPOUR-HOLE',
  holding: 'ONEPOUR-HOLDING',
  bar: 'ONEPOUR-BAR',
  section: 'ONEPOUR-SECTION',
  dimension: 'ONEPOUR-DIMENSION',
  text: 'ONEPOUR-TEXT',
  datum: 'ONEPOUR-DATUM',
  frame: 'ONEPOUR-FRAME',
};
