/* Before a function that is seldom called: it stands by itself. As part of its caller, each call of
 * that made room for what it needs. */
#ifndef TYRESUM_BASE_SELDOM_H
#define TYRESUM_BASE_SELDOM_H

#define SELDOM __attribute__((noinline, cold))

#endif
