namespace Confectio.Tests;
public class SmokeTests { [Xunit.Fact] public void Runs() => Xunit.Assert.True(1+1==2); }
