/** What it becomes bears on the join, and so is read with the recipe. */
export const becomesField = 'cloth.becomes';
/** The side that stays open, from 1. */
export const openSideField = 'cloth.open-side';
