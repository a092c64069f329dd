/* stopwatch RUNS INPUT OUTPUT PROGRAM [ARGUMENT...]: runs a program again and again and prints the
 * least, the median and the most of its wall time in microseconds, and its peak memory in KiB: its
 * own high-water mark, since this parent is smaller than any program that it runs. A shell has no
 * clock that is fine enough for a program that ends in a millisecond. */
#define _DEFAULT_SOURCE /* ru_maxrss, in KiB on Linux */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
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

static void become(const char *input, const char *output, char **command)
{
    int in = open(input, O_RDONLY), out = open(output, O_WRONLY | O_CREAT | O_TRUNC, 0666);
    if (in < 0 || out < 0 || dup2(in, STDIN_FILENO) < 0 || dup2(out, STDOUT_FILENO) < 0)
        _exit(126);
    execvp(command[0], command);
    _exit(127);
}

/* Wall time of one run in microseconds; ends the stopwatch if the program does not end well. */
static double run_us(const char *input, const char *output, char **command)
{
    double start_us = now_us();
    pid_t child = fork();
    if (child == 0)
        become(input, output, command);
    int status;
    if (child < 0 || waitpid(child, &status, 0) != child || status != 0) {
        fprintf(stderr, "stopwatch: %s did not end with status 0\n", command[0]);
        exit(1);
    }
    return now_us() - start_us;
}

int main(int argc, char **argv)
{
    int runs = argc > 4 ? atoi(argv[1]) : 0;
    double *times_us = runs > 0 ? malloc((size_t)runs * sizeof *times_us) : NULL;
    if (times_us == NULL) {
        fprintf(stderr, "usage: stopwatch RUNS INPUT OUTPUT PROGRAM [ARGUMENT...]\n");
        return 2;
    }
    for (int i = 0; i < runs; i++)
        times_us[i] = run_us(argv[2], argv[3], argv + 4);
    qsort(times_us, (size_t)runs, sizeof *times_us, compare_doubles);
    struct rusage usage;
    getrusage(RUSAGE_CHILDREN, &usage);
    printf("%.0f %.0f %.0f %ld\n", times_us[0], times_us[runs / 2], times_us[runs - 1],
           usage.ru_maxrss);
    free(times_us);
    return 0;
}
