/** Letters, their accents, and the stops a voice pauses at. */
export const onlyWords = /^[\p{L}\p{M} ,.?!'’-]*$/u
