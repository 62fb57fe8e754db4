/* Orifices and channels against published tables and closed formulas. */
#include "check_close.h"
#include "flank.h"
#include "orifice.h"

#define PI 3.14159265358979323846

#define NACA_1135                                                             \
    "Ames Research Staff, Equations, Tables and Charts for Compressible "     \
    "Flow, NACA Report 1135 (1953)"
#define SHAPIRO                                                               \
    "by the formula of A. H. Shapiro, Compressible Fluid Flow (1953), ch. 4"
#define NAMAZIAN                                                              \
    "by the formula of Namazian and Heywood, Flow in the Piston-Cylinder-"    \
    "Ring Crevices, SAE 820088 (1982)"

static struct cg_flow_gas gas_of(double constant, double gamma)
{
    struct cg_flow_gas gas;
    cg_flow_gas_set(&gas, constant, gamma);
    return gas;
}

/* The same flow fits through the table's A at p/p0 and through A* choked. */
START_TEST(isentropic_table)
{
    static const struct {
        double pressure, area; /* p/p0, A/A* at M = 0.5, 0.9 */
    } row[] = {{0.8430, 1.3398}, {0.5913, 1.0089}};
    struct cg_flow_gas gas = gas_of(287.0, 1.4);
    check_close(gas.critical, 0.5283, 1e-4, NACA_1135);
    for (int i = 0; i < 2; i++)
        check_close(cg_orifice_function(&gas, gas.critical) /
                        cg_orifice_function(&gas, row[i].pressure),
                    row[i].area, 2e-4, NACA_1135);
}
END_TEST

START_TEST(flow_function)
{
    static const struct {
        double gamma, critical, at[6]; /* choked, 0.95 0.9 0.8 0.7 0.6 */
    } row[] = {
        {1.40, 0.52828,
         {0.68473, 0.30764, 0.42258, 0.56066, 0.63832, 0.67692}},
        {1.30, 0.54573,
         {0.66726, 0.30699, 0.42075, 0.55551, 0.62896, 0.66271}}};
    static const double ratio[6] = {0.3, 0.95, 0.90, 0.80, 0.70, 0.60};
    for (int i = 0; i < 2; i++) {
        struct cg_flow_gas gas = gas_of(287.0, row[i].gamma);
        check_close(gas.critical, row[i].critical, 1e-5, SHAPIRO);
        for (int j = 0; j < 6; j++)
            check_close(cg_orifice_function(&gas, ratio[j]), row[i].at[j],
                        2e-5, SHAPIRO);
    }
}
END_TEST

START_TEST(choked_air)
{
    struct cg_flow_gas gas = gas_of(287.05, 1.4);
    struct cg_flow flow;
    cg_orifice_flow(&gas, 1.0, 288.15, 1e5, 0.2e5, &flow);
    check_close(flow.rate * sqrt(288.15) / 1e5, 0.0404, 1e-3,
                "choked air, m sqrt(T)/(A p) = 0.0404 (textbook constant, "
                "from memory)");
}
END_TEST

/* Ring gaps of known size. */
START_TEST(ring_gap_flow)
{
    struct cg_flow_gas gas = gas_of(287.0, 1.4);
    struct cg_flow flow;
    cg_orifice_flow(&gas, 0.86 * 0.30e-3 * 0.05e-3, 450.0, 5e6, 1e5, &flow);
    check_close(flow.rate, 1.2289e-4, 2e-4, NAMAZIAN);
    gas = gas_of(287.0, 1.3);
    cg_orifice_flow(&gas, 0.86 * 0.30e-3 * 0.50e-3, 500.0, 5e6, 1e5, &flow);
    check_close(flow.rate, 1.1361e-3, 2e-4, NAMAZIAN);
}
END_TEST

START_TEST(laminar_channel)
{
    struct cg_flow_gas gas = gas_of(287.0, 1.4);
    struct cg_channel channel = {50e-6, PI * 0.086, 3e-3, 450.0, 2.6e-5,
                                 0.86};
    check_close(cg_channel_laminar(&gas, &channel, 5.0e6, 4.9e6), 0.138, 5e-3,
                NAMAZIAN);
    /* A thin one is laminar through and through... */
    struct cg_flow flow;
    channel.height = 1e-6;
    cg_channel_flow(&gas, &channel, 5.0e6, 4.9e6, &flow);
    double laminar = cg_channel_laminar(&gas, &channel, 5.0e6, 4.9e6);
    ck_assert_double_eq_tol(flow.rate, laminar, 1e-3 * laminar);
    /* ...and a wide one can pass no more than its own section choked. */
    struct cg_flow most;
    channel.height = 500e-6;
    cg_channel_flow(&gas, &channel, 5.0e6, 1e5, &flow);
    cg_orifice_flow(&gas, 0.86 * channel.height * channel.length, 450.0, 5.0e6,
                    1e5, &most);
    ck_assert_double_eq_tol(flow.rate, most.rate, 1e-2 * most.rate);
}
END_TEST

/* Incompressible limit: drops a q and b q^2 in series. */
START_TEST(series_of_two_drops)
{
    struct cg_flow_gas gas = gas_of(287.0, 1.4);
    struct cg_channel channel = {30e-6, 0.27, 3e-3, 450.0, 2.6e-5, 0.86};
    double up = 1e6, drop = 10.0;
    double laminar = cg_channel_laminar(&gas, &channel, up, up - drop);
    double density = up / (287.0 * 450.0);
    double section = 0.86 * channel.height * channel.length;
    double a = drop / laminar;
    double b = 1.0 / (2.0 * density * section * section);
    double exact = (-a + sqrt(a * a + 4.0 * b * drop)) / (2.0 * b);
    struct cg_flow flow;
    cg_channel_flow(&gas, &channel, up, up - drop, &flow);
    check_close(flow.rate, exact, 1e-4, "Bernoulli after Poiseuille");
}
END_TEST

/* White gives Sutherland's law 2 %. */
START_TEST(viscosity_of_air)
{
    check_close(cg_gas_viscosity(300.0), 184.6e-7, 0.02,
                "Incropera, Fundamentals of Heat and Mass Transfer, table "
                "A.4 (from memory)");
    check_close(cg_gas_viscosity(450.0), 250.7e-7, 0.02,
                "Incropera, table A.4 (from memory)");
    check_close(cg_gas_viscosity(600.0), 305.8e-7, 0.02,
                "Incropera, table A.4 (from memory)");
    check_close(cg_gas_viscosity(1200.0), 4.63206e-5, 1e-5,
                "F. M. White, Viscous Fluid Flow (1974), table 1-2: "
                "Sutherland's law for air, evaluated");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("orifices and channels, published");
    TCase *tcase = tcase_create("all");
    tcase_add_test(tcase, isentropic_table);
    tcase_add_test(tcase, flow_function);
    tcase_add_test(tcase, choked_air);
    tcase_add_test(tcase, ring_gap_flow);
    tcase_add_test(tcase, laminar_channel);
    tcase_add_test(tcase, series_of_two_drops);
    tcase_add_test(tcase, viscosity_of_air);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
