using Microsoft.AspNetCore.Components;

namespace Clutchwright.Web.Layout;

/// <summary>The base of every component here (named in <c>_Imports.razor</c>): drawn once, when all that it asks for is answered.</summary>
/// <remarks>A component as it comes draws itself first without answers, where one has to be waited for. The pages are sent whole, so
/// that such a drawing would be seen by nobody, and would have to do without everything the page is about.</remarks>
public abstract class AnsweredComponent : ComponentBase
{
    private bool _isInitialized;

    /// <inheritdoc/>
    public override async Task SetParametersAsync(ParameterView parameters)
    {
        parameters.SetParameterProperties(this);
        if (!_isInitialized)
        {
            _isInitialized = true;
            OnInitialized();
            await OnInitializedAsync();
        }

        OnParametersSet();
        await OnParametersSetAsync();
        StateHasChanged();
    }
}
