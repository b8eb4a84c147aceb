// Loaded into a process before its own code: at a signal something fails that nobody waits for, as deep in a library.
process.on('SIGUSR2', () => void Promise.reject(new Error('the words of a library')))
