using System.Text.Json;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

[Collection(PhoneGroup.Name)]
public class QuickAnswerTests(Phone phone)
{
    [Fact]
    public async Task Saturation_and_conversion_are_answered_without_a_signal()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.InstalledAsync(page);
        await page.Context.SetOfflineAsync(true);
        await page.Locator("#show-more").ClickAsync();
        await page.Locator("#quick-open").ClickAsync();

        await page.Locator("#quick-refrigerant").SelectOptionAsync("R404A");
        await page.Locator("#quick-value").FillAsync("20");
        await Assertions.Expect(page.Locator("#quick-answer")).ToContainTextAsync("dew: 46.2 °C");
        await page.Locator("#convert-value").FillAsync("100");
        await page.Locator("#convert-unit").SelectOptionAsync("Pressure|psig");
        // 100 psi is 6.895 bar (NIST SP 811).
        await Assertions.Expect(page.Locator("#convert-answer")).ToContainTextAsync("6.895 bar");
        await Phone.ShootAsync(page, "quick");
    }

    [Fact]
    public async Task The_page_interpolates_as_the_program_does_to_a_hundredth_of_a_kelvin()
    {
        var page = await phone.NewPageAsync();
        await page.GotoAsync("/");
        var points = Points().ToList();

        var found = await page.EvaluateAsync<double[]>(
            """
            async text => {
              const { Curve, loadTables } = await import("/js/tables.js");
              const { refrigerants } = await loadTables();
              const curves = new Map(refrigerants.flatMap(r => ["dew", "bubble"].map(p => [`${r.name} ${p}`, new Curve(r.first, r[p])])));
              return JSON.parse(text).flatMap(({ curve, pascals }) => {
                const degrees = curves.get(curve).temperature(pascals);
                return [degrees, curves.get(curve).pressure(degrees)];
              });
            }
            """,
            JsonSerializer.Serialize(points.Select(p => new { curve = p.Curve, pascals = p.Pascals })));

        var worst = points.Select((p, i) => Math.Abs(p.Degrees - found[2 * i])).Max();
        var back = points.Select((p, i) => Math.Abs((found[(2 * i) + 1] / p.Pascals) - 1)).Max();
        Talk.Note($"tables on the page against the program, {points.Count} points: worst {worst:0.000000} K, back within {back:0.0e0}");
        Assert.InRange(worst, 0, 0.01);
        Assert.InRange(back, 0, 1e-6);
    }

    /// <summary>Between the knots of every curve of every refrigerant, and on them.</summary>
    private static IEnumerable<(string Curve, double Pascals, double Degrees)> Points()
    {
        foreach (var refrigerant in RefrigerantLibrary.All)
        {
            var table = refrigerant.Saturation;
            for (var degrees = table.Temperatures.Lowest.Degrees + 0.37; degrees < table.Temperatures.Highest.Degrees; degrees += 2.71)
            {
                var temperature = new CelsiusTemperature(degrees);
                yield return ($"{refrigerant.Designation} dew", table.DewPressure(temperature).Pascals, degrees);
                yield return ($"{refrigerant.Designation} bubble", table.BubblePressure(temperature).Pascals, degrees);
            }
        }
    }
}
