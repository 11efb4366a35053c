/**
 * Sentences that the core and the hosts make in English, each beside its translation, without the full stop. A name in
 * braces stands for a figure or a name and is carried over; one whose
 * name begins with `figure` stands for a figure alone, with `figures` for one or several with commas between them.
 */
export type Told = readonly (readonly [english: string, translated: string])[];
