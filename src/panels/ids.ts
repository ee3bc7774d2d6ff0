/** Ids by which parts of the page find each other. */
export const SETTINGS_ID = 'settings';
export const KEYS_ID = 'keys';
export const PANEL_ID = 'panel';
export const RECIPE_ID = 'recipe-heading';
