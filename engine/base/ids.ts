declare const brand: unique symbol;
type Id<Kind extends string> = string & { readonly [brand]: Kind };

/** Id of a unit or supply. Ids are free text in the file and carry no meaning. */
export type UnitId = Id<'unit'>;
/** Id of a chain, which is also the id of the controller's chain port it hangs on. */
export type ChainId = Id<'chain'>;
/** Id of a link: one duplex optical cable between two ports. */
export type LinkId = Id<'link'>;
/** Id of a 24 V power lead. */
export type LeadId = Id<'lead'>;
/** Id of a feedback cable (an encoder's or scale's cable). */
export type FeedbackId = Id<'feedback'>;
/** Id of an equipment type. */
export type TypeId = Id<'type'>;
/** Id of a legend. */
export type LegendId = Id<'legend'>;
