/** How counting on a photo is offered beside the counts. */
export const photoWords = {
  offer: 'Count on a photo',
  offerHint:
    'Lay a line on the edge, mark every V, and the number is put in. A photo that is kept opens with its marks.',
} as const;
