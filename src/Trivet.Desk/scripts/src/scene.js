export function start() {}
