/* The exit statuses, all of them. When several apply: 4, then 2, then 3, then 1. */
#ifndef TYRESUM_BASE_STATUS_H
#define TYRESUM_BASE_STATUS_H

enum exit_status {
    EXIT_COMPUTED = 0, /* everything was computed */
    EXIT_LINES_UNREAD =
        1, /* computed, but a line of a stream could not be read (its row says why) */
    EXIT_INPUT_WRONG = 2,  /* arguments or input file are wrong: nothing on standard output */
    EXIT_FINDING_FAIL = 3, /* with --strict: at least one finding is `fail` */
    EXIT_NOT_WRITTEN = 4   /* the output could not be written */
};

#endif
