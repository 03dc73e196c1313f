using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Trivet.Floor.Device;
using Trivet.Floor.Pages;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<FloorPage>("#floor");
builder.Services.AddScoped<DeviceStore>();
builder.Services.AddScoped<Browser>();
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddScoped<Session>();
builder.Services.AddScoped<DeskLine>();
builder.Services.AddScoped(_ => new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress) });
await builder.Build().RunAsync();
