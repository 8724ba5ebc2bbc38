// mg of nitrogen, and what of it is excreted as ammonia.

// A rotifer weighs 0.31-0.85 ug dry (Yufera & Pascual 1989), a nauplius 1.6-2.4 ug (Vanhaecke & Sorgeloos 1980); about half of
// either is protein (FAO Fish. Tech. Pap. 361, from memory), a sixth of which by 6.25 is nitrogen.
const proteinShare = 0.5
const nPerProtein = 0.16
const dryMg = { rotifer: 0.0005, nauplius: 0.002 }
// P_TAN = 0.092 x feed x protein: Timmons & Ebeling, Recirculating Aquaculture (from memory); fish as a whole.
const ammoniaPerProtein = 0.092

const ammoniaOf = (dry: number) => dry * proteinShare * ammoniaPerProtein

export const excretedOf = {
  rotifers: (eaten: number) => ammoniaOf(eaten * dryMg.rotifer),
  nauplii: (eaten: number) => ammoniaOf(eaten * dryMg.nauplius),
  dryFoodG: (grams: number) => ammoniaOf(grams * 1000),
}

// Mysids and shrimp, drained: four fifths of them are water. from memory
export const dryShareOfFrozen = 0.2
/** Nitrogen in dry food that nobody eats, all of which comes out of it as it rots. */
export const nInDryFoodG = (grams: number): number => grams * 1000 * proteinShare * nPerProtein
// Some 0.1 mg dry at the hatch, a fifth more each day until they settle, a tenth of it nitrogen. assumptions, after clownfish larvae
// of 4-5 mm that grow to some 1-2 mg in two weeks (from memory)
export const nInLarvaMg = (ageDays: number): number => 0.1 * Math.exp(0.2 * Math.min(15, ageDays)) * 0.1
/** Of a rotifer. */
export const nInRotiferMg = dryMg.rotifer * proteinShare * nPerProtein
// Of what pairs and growing fish are given. common practice, a tenth
export const uneatenShare = 0.1
/** What a pinch holds, on a knife's point. assumption */
export const pinchG = 0.03

// A feed of a pair, in two a day: a hundredth of some 25 g of fish. assumption, after 3-5 % wet in F165 of the reference values
export const pairFeedG = 0.15

// 75,000 cells a rotifer and day of 6.1 pg (Nannochloropsis, from memory), a third of it protein (Brown 1991, from memory).
const algaeNMgPerDay = 75_000 * 6.1e-9 * 0.35 * nPerProtein
// Of the nitrogen they ingest 5 % is excreted (Hino, Aoki & Ushiro 1997, Hydrobiologia 358:77-82), and of the 77 % that they
// egest 13 % turns into ammonia (Aoki & Hino 1996, Fish. Sci. 62:8-14).
const excretedShare = 0.05 + 0.77 * 0.13
/** Of one rotifer that eats algae, in an hour. */
export const rotiferNMgPerHour = (algaeNMgPerDay * excretedShare) / 24
