using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Desk.Components.Wiring;
using Trivet.Views.Settings;

namespace Trivet.Desk.Wiring;

public sealed class SettingsSectionTests : BunitContext, IAsyncLifetime
{
    private OneCellJob _job = null!;

    public async ValueTask InitializeAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(TimeProvider.System);
        _job = await OneCellJob.StartAsync();
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _job.DisposeAsync();
    }

    [Fact]
    public async Task The_list_stands_with_all_values_and_goes_out_as_pdf()
    {
        var section = await SectionAsync();
        Assert.Equal(_job.Session!.Cell.Controller.Settings.Count, section.FindAll("[data-table='settings'] tbody tr").Count);
        Assert.Contains(section.FindAll("[data-table='settings'] tbody tr"), r => r.TextContent.Contains("Rod length", StringComparison.Ordinal) && r.TextContent.Contains("560.00", StringComparison.Ordinal));
        await section.Find("[data-download='settings.pdf']").ClickAsync(new());
        var save = Assert.Single(JSInterop.Invocations, i => i.Identifier == "trivet.save");
        Assert.Equal("%PDF", System.Text.Encoding.ASCII.GetString((byte[])save.Arguments[2]!, 0, 4));
    }

    [Fact]
    public async Task An_export_is_compared_and_follows_an_edit_of_the_plan()
    {
        var section = await SectionAsync();
        Upload(section, "export-file", "jar-lids.txt", Export());
        section.WaitForAssertion(() => Assert.Contains("Every planned parameter is there", section.Find("[data-export='export']").TextContent, StringComparison.Ordinal));
        await _job.Session!.EditAsync(_job.Session.Cell with { Robot = _job.Session.Cell.Robot with { Common = _job.Session.Cell.Robot.Common with { Rod = 0.561 } } }, "longer rods");
        section.Render(p => p.Add(x => x.Session, _job.Session).Add(x => x.Section, SettingSections.Of(_job.Session.Cell)[0]));
        Assert.Contains("Type 561.00, or change rod length", section.Find("[data-table='compared'] tbody tr").TextContent, StringComparison.Ordinal);
        Upload(section, "export-file", "wrong.txt", "[rod");
        section.WaitForAssertion(() => Assert.Contains("wrong.txt:1:1", section.Find("[data-refused]").TextContent, StringComparison.Ordinal));
        Assert.Empty(section.FindAll("[data-export]"));
    }

    [Fact]
    public async Task Two_files_prove_a_restored_backup_or_do_not()
    {
        var section = await SectionAsync();
        Upload(section, "backup-file", "backup.txt", Export());
        Assert.Empty(section.FindAll("[data-export]"));
        Upload(section, "restored-file", "read-out.txt", Export().Replace("hours = 312", "hours = 313", StringComparison.Ordinal));
        section.WaitForAssertion(() => Assert.Contains("Restored equal", section.Find("[data-export='restored']").TextContent, StringComparison.Ordinal));
        Assert.Equal(2, section.FindAll("[data-table='files'] tbody tr").Count);
        Upload(section, "restored-file", "read-out.txt", Export().Replace("rod = 560.00", "rod = 561.00", StringComparison.Ordinal));
        section.WaitForAssertion(() => Assert.Contains("Not restored equal", section.Find("[data-export='restored']").TextContent, StringComparison.Ordinal));
        await section.Find("[data-download='restored.pdf']").ClickAsync(new());
        Assert.Contains(JSInterop.Invocations, i => i.Identifier == "trivet.save" && ((string)i.Arguments[0]!).EndsWith("restored.pdf", StringComparison.Ordinal));
    }

    private static void Upload(IRenderedComponent<SettingsSection> section, string id, string name, string text) =>
        section.FindComponents<InputFile>().Single(f => f.Markup.Contains($"id=\"{id}\"", StringComparison.Ordinal)).UploadFiles(InputFileContent.CreateFromText(text, name));

    private static string Export()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!at.EnumerateFiles("Trivet.slnx").Any()) at = at.Parent!;
        return File.ReadAllText(Path.Combine(at.FullName, "samples", "exports", "jar-lids.txt"));
    }

    private async Task<IRenderedComponent<SettingsSection>> SectionAsync()
    {
        await _job.OpenAsync(OneCellJob.Sample("jar-lids"));
        return Render<SettingsSection>(p => p.Add(x => x.Session, _job.Session).Add(x => x.Section, SettingSections.Of(_job.Session!.Cell)[0]));
    }
}
