/* stopwatch RUNS INPUT OUTPUT PROGRAM [ARGUMENT...] [, PROGRAM [ARGUMENT...]]...: runs the programs
 * by turns, so that what else the machine does hits them alike, and prints a line for each: the
 * least, the median and the most of its wall time in microseconds; its peak memory in KiB (its own
 * high-water mark, since this parent is smaller than any program that it runs); and its time as a
 * multiple of the first program's in the same turn, of which the median. The output is emptied
 * before the time begins. A shell has no clock that is fine enough for a program that ends in a
 * millisecond. */
#define _DEFAULT_SOURCE /* wait4, and ru_maxrss in KiB on Linux */
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

static int compare_doubles(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double now_us(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec * 1e6 + (double)t.tv_nsec / 1e3;
}

static void become(int in, int out, char **command)
{
    if (in < 0 || out < 0 || dup2(in, STDIN_FILENO) < 0 || dup2(out, STDOUT_FILENO) < 0)
        _exit(126);
    execvp(command[0], command);
    _exit(127);
}

/* Wall time of one run in microseconds; ends the stopwatch if the program does not end well. */
static double run_us(const char *input, const char *output, char **command, long *peak_kib)
{
    int in = open(input, O_RDONLY), out = open(output, O_WRONLY | O_CREAT | O_TRUNC, 0666);
    double start_us = now_us();
    pid_t child = fork();
    if (child == 0)
        become(in, out, command);
    int status;
    struct rusage usage;
    if (child < 0 || wait4(child, &status, 0, &usage) != child || status != 0) {
        fprintf(stderr, "stopwatch: %s did not end with status 0\n", command[0]);
        exit(1);
    }
    double took_us = now_us() - start_us;
    close(in);
    close(out);
    *peak_kib = usage.ru_maxrss > *peak_kib ? usage.ru_maxrss : *peak_kib;
    return took_us;
}

enum { PROGRAMS_MAX = 8, RUNS_MAX = 1000 };

struct program {
    char **command;
    double times_us[RUNS_MAX], times_first[RUNS_MAX];
    long peak_kib;
};

static double median(double *values, int count)
{
    qsort(values, (size_t)count, sizeof *values, compare_doubles);
    return values[count / 2];
}

int main(int argc, char **argv)
{
    static struct program programs[PROGRAMS_MAX];
    int runs = argc > 4 ? atoi(argv[1]) : 0, count = 0;
    bool begins = true;
    for (int i = 4; i < argc; i++) {
        bool parted = strcmp(argv[i], ",") == 0;
        if (parted)
            argv[i] = NULL;
        else if (begins && count < PROGRAMS_MAX)
            programs[count++].command = &argv[i];
        begins = parted;
    }
    if (runs < 1 || runs > RUNS_MAX || count == 0) {
        fprintf(stderr,
                "usage: stopwatch RUNS INPUT OUTPUT PROGRAM [ARGUMENT...] [, PROGRAM...]\n");
        return 2;
    }
    for (int i = 0; i < runs; i++)
        for (struct program *p = programs; p < programs + count; p++) {
            p->times_us[i] = run_us(argv[2], argv[3], p->command, &p->peak_kib);
            p->times_first[i] = p->times_us[i] / programs->times_us[i];
        }
    for (struct program *p = programs; p < programs + count; p++) {
        double middle_us = median(p->times_us, runs); /* and in order from here on */
        printf("%.0f %.0f %.0f %ld %.4f\n", p->times_us[0], middle_us, p->times_us[runs - 1],
               p->peak_kib, median(p->times_first, runs));
    }
    return 0;
}
