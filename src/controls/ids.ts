/** Ids by which parts of the page find each other. */
export const SETTINGS_ID = 'settings';
export const KEYS_ID = 'keys';
export const PANEL_ID = 'panel';
export const QUESTION_ID = 'question';
export const NEXT_ID = 'next';
export const RECIPE_ID = 'recipe-heading';
