/**
 * Which model a stored figure came from. To be raised by whoever changes what the same documents predict, so that a
 * sheet or an approval of before is told apart from what is said today.
 */
export const MODEL_VERSION = "2";
