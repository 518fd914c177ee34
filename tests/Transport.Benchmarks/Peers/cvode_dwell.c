/* The three-pore equations of one dwell, integrated by CVODE (Adams, fixed-point iteration): a peer that our own integrator is timed against.
   Units: mL, min, umol, mmol/L, mmHg. State: V, M of each solute, then the integrals of the three pore flows.
   Coefficients, in this order: lp[3], oncotic[3], lymph, pressure at V = 0, pressure per mL, transient amplitude, transient rate, inflow, outflow, then
   eleven rows of n: plasma, fresh, passed and PS of small pores, passed and PS of large pores, pull in the three pores, 1/(2 PS) of small and large pores. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdlib.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

enum { MAXIMUM = 32, HEAD = 13 };

typedef struct {
    int n;
    double instilled, target;
    const double *c;
    SUNContext context;
    N_Vector y, atol;
    SUNNonlinearSolver solver;
    void *cvode;
} Peer;

/* y coth y by its continued fraction, as far as it goes; both branches are those of the library. */
static void gains(int n, const double *z, double *g)
{
    for (int i = 0; i < n; i++) {
        double x = z[i];
        g[i] = (654729075 + x * (310134825 + x * (18918900 + x * (315315 + x * (1485 + x)))))
            / (654729075 + x * (91891800 + x * (2837835 + x * (25740 + x * 55))));
    }
    for (int i = 0; i < n; i++)
        if (z[i] > 4) {
            double y = sqrt(z[i]);
            g[i] = y > 16 ? y : y * (1 + 2 / (exp(2 * y) - 1));
        }
}

static int rates(sunrealtype t, N_Vector state, N_Vector derivatives, void *data)
{
    Peer *p = data;
    const int n = p->n;
    const double *c = p->c, *r = c + HEAD;
    const double *plasma = r, *fresh = r + n, *passed_S = r + 2 * n, *ps_S = r + 3 * n, *passed_L = r + 4 * n, *ps_L = r + 5 * n;
    const double *pull_C = r + 6 * n, *pull_S = r + 7 * n, *pull_L = r + 8 * n, *half_S = r + 9 * n, *half_L = r + 10 * n;
    const double *y = N_VGetArrayPointer(state);
    double *dy = N_VGetArrayPointer(derivatives);
    double d[MAXIMUM], w_S[MAXIMUM], w_L[MAXIMUM], z_S[MAXIMUM], z_L[MAXIMUM], g_S[MAXIMUM], g_L[MAXIMUM];
    if (y[0] <= 0)
        return 1;
    double perVolume = 1 / y[0], pressure = c[7] - c[8] * y[0];
    double drive[3] = {pressure - c[3], pressure - c[4], pressure - c[5]};
    for (int i = 0; i < 4; i++) {
        double gradient = plasma[i] - y[1 + i] * perVolume;
        drive[0] -= pull_C[i] * gradient;
        drive[1] -= pull_S[i] * gradient;
        drive[2] -= pull_L[i] * gradient;
    }
    double j_C = c[0] * drive[0], j_S = c[1] * drive[1], j_L = c[2] * drive[2];
    double a = 1 + c[9] * exp((p->instilled - t) * c[10]), perArea = 1 / a, outward = c[12] + c[6];
    for (int i = 0; i < n; i++) {
        d[i] = y[1 + i] * perVolume;
        w_S[i] = passed_S[i] * j_S;
        w_L[i] = passed_L[i] * j_L;
        double y_S = w_S[i] * perArea * half_S[i], y_L = w_L[i] * perArea * half_L[i];
        z_S[i] = y_S * y_S;
        z_L[i] = y_L * y_L;
    }
    gains(n, z_S, g_S);
    gains(n, z_L, g_L);
    for (int i = 0; i < n; i++)
        dy[1 + i] = (w_S[i] + w_L[i]) * 0.5 * (plasma[i] + d[i])
            + (ps_S[i] * g_S[i] + ps_L[i] * g_L[i]) * a * (plasma[i] - d[i]) - outward * d[i] + c[11] * fresh[i];
    dy[0] = j_C + j_S + j_L + c[11] - outward;
    dy[n + 1] = j_C;
    dy[n + 2] = j_S;
    dy[n + 3] = j_L;
    return 0;
}

static int crossing(sunrealtype t, N_Vector state, sunrealtype *out, void *data)
{
    (void)t;
    out[0] = N_VGetArrayPointer(state)[0] - ((Peer *)data)->target;
    return 0;
}

void *peer_create(int n, double tolerance, const double *scale)
{
    Peer *p = calloc(1, sizeof *p);
    p->n = n;
    if (SUNContext_Create(NULL, &p->context))
        return NULL;
    p->y = N_VNew_Serial(n + 4, p->context);
    p->atol = N_VNew_Serial(n + 4, p->context);
    for (int i = 0; i < n + 4; i++) {
        N_VGetArrayPointer(p->atol)[i] = tolerance * scale[i];
        N_VGetArrayPointer(p->y)[i] = 1;
    }
    p->cvode = CVodeCreate(CV_ADAMS, p->context);
    p->solver = SUNNonlinSol_FixedPoint(p->y, 0, p->context);
    if (CVodeInit(p->cvode, rates, 0, p->y) || CVodeSVtolerances(p->cvode, tolerance, p->atol) || CVodeSetUserData(p->cvode, p)
        || CVodeSetNonlinearSolver(p->cvode, p->solver) || CVodeSetMaxNumSteps(p->cvode, 100000))
        return NULL;
    return p;
}

/* A dwell: its states at the minutes asked for. Returns evaluations of the right-hand side, or a negative number. */
long peer_dwell(void *peer, const double *coefficients, const double *start, const double *minutes, int count, double *states)
{
    Peer *p = peer;
    double *y = N_VGetArrayPointer(p->y);
    sunrealtype t;
    long evaluations;
    p->c = coefficients;
    p->instilled = 0;
    for (int i = 0; i < p->n + 4; i++)
        y[i] = start[i];
    if (CVodeReInit(p->cvode, 0, p->y))
        return -1;
    for (int k = 0; k < count; k++) {
        if (CVode(p->cvode, minutes[k], p->y, &t, CV_NORMAL) < 0)
            return -1;
        for (int i = 0; i < p->n + 4; i++)
            states[k * (p->n + 4) + i] = y[i];
    }
    return CVodeGetNumRhsEvals(p->cvode, &evaluations) ? -1 : evaluations;
}

/* A phase: from a time to its end, or until the volume has fallen to a target (where that is not negative). Returns evaluations, or a negative
   number; time and state move on. */
long peer_phase(void *peer, const double *coefficients, double instilled, double end, double target, double *time, double *state)
{
    Peer *p = peer;
    double *y = N_VGetArrayPointer(p->y);
    long evaluations;
    if (*time >= end)
        return 0;
    p->c = coefficients;
    p->instilled = instilled;
    p->target = target;
    for (int i = 0; i < p->n + 4; i++)
        y[i] = state[i];
    if (CVodeReInit(p->cvode, *time, p->y) || CVodeRootInit(p->cvode, target >= 0, crossing) || CVode(p->cvode, end, p->y, time, CV_NORMAL) < 0
        || CVodeGetNumRhsEvals(p->cvode, &evaluations))
        return -1;
    for (int i = 0; i < p->n + 4; i++)
        state[i] = y[i];
    return evaluations;
}

void peer_free(void *peer)
{
    Peer *p = peer;
    CVodeFree(&p->cvode);
    SUNNonlinSolFree(p->solver);
    N_VDestroy(p->y);
    N_VDestroy(p->atol);
    SUNContext_Free(&p->context);
    free(p);
}
